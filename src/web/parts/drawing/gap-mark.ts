import type { BendView } from './bend-view.ts';
import type { DrawingFrame } from './drawing-frame.ts';
import { raisedFractions } from './fraction-text.ts';
import { dimensionPath, gapDimension, widestGap } from './gap-dimension.ts';
import { along, onScreen } from './line-fans.ts';
import { roomyPx } from './room-above.ts';
import { setAll, setText, svgNode } from './svg-nodes.ts';

/** The widest gap of the drawn load as a dimension on the rod; its figure stands on the line's side. */
export class GapMark {
  private readonly mark: SVGPathElement;
  private readonly name: SVGTextElement;

  constructor(svg: SVGSVGElement) {
    this.mark = svgNode(svg, 'path', { class: 'bend-gap' });
    this.name = svgNode(svg, 'text', { class: 'bend-gap-name', 'text-anchor': 'middle' });
  }

  paint({ rod, loads, drawn }: BendView, frame: DrawingFrame): void {
    const load = loads[drawn];
    const span = frame.widthPx > roomyPx ? widestGap(load) : -1;
    const gapM = load.ruled[span]?.ruleGapM ?? 0;
    setText(this.name, gapM > 0 ? raisedFractions(rod.gap(gapM)) : '');
    this.mark.setAttribute('d', '');
    if (gapM <= 0) return;
    const { line, blank } = gapDimension(load, span);
    const [a, b] = [onScreen(line, frame), onScreen(blank, frame)];
    const way = Math.atan2(a.y - b.y, a.x - b.x);
    const [end, name] = [along(a, way, 18), along(a, way, 32)];
    this.mark.setAttribute('d', `${dimensionPath(a, b, 8)}M${a.x} ${a.y}L${end.x} ${end.y}`);
    setAll(this.name, { x: name.x, y: name.y + 4 });
  }
}
