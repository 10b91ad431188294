import {
  byMetric,
  type Criterion,
  countedValues,
  criteriaIn,
  type Metric,
  metrics,
} from '../../../engine/layout/criteria.ts';
import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { raisedFractions } from '../../parts/drawing/fraction-text.ts';
import { dots, setAll, setText, svgNode } from '../../parts/drawing/svg-nodes.ts';
import { type RulerScale, rulerScale } from './ruler-scale.ts';
import type { ReadLayout, SheetFrame } from './sheet-frame.ts';

/** One strip for each criterion under the ruler and on its scale: every guide and every load against the limit. */
export interface StripsModel {
  lengthM: number;
  limits: LayoutLimits;
  /** `line angle, limit 15°`. */
  titles: Partial<Record<Metric, string>>;
}
interface StripPoint {
  atM: number;
  value: number;
}

const titlePx = 20;

/** Made once for an svg element; `paint` may be called every frame. */
export class StripsDrawing {
  private readonly svg: SVGSVGElement;
  private readonly strips: Record<Metric, Strip>;
  private widthPx = 0;
  private stripPx = 0;

  constructor(svg: SVGSVGElement) {
    this.svg = svg;
    svg.replaceChildren();
    this.strips = byMetric(() => new Strip(svg));
  }

  resize({ limits }: StripsModel, widthPx: number, stripPx: number): void {
    this.widthPx = widthPx;
    this.stripPx = stripPx;
    const heightPx = criteriaIn(limits).length * (stripPx + titlePx);
    setAll(this.svg, { viewBox: `0 0 ${widthPx} ${heightPx}`, width: widthPx, height: heightPx });
  }

  paint(model: StripsModel, frame: SheetFrame): void {
    if (!this.widthPx || !frame.ours) return;
    const scale = rulerScale(this.widthPx, model.lengthM);
    const judged = criteriaIn(model.limits);
    for (const id of metrics) this.strips[id].show(judged.some((criterion) => criterion.id === id));
    for (const criterion of judged) {
      this.strips[criterion.id].paint({
        row: judged.indexOf(criterion),
        scale,
        heightPx: this.stripPx,
        title: model.titles[criterion.id] ?? '',
        limit: model.limits[criterion.quantity]!,
        ours: pointsOf(frame.ours, criterion),
        start: frame.beside.start ? pointsOf(frame.beside.start, criterion) : [],
        drawn: frame.drawn,
        settled: !frame.dragging,
      });
    }
  }
}

interface StripView {
  /** From above. */
  row: number;
  scale: RulerScale;
  heightPx: number;
  title: string;
  limit: number;
  /** Per load, tip first. */
  ours: StripPoint[][];
  start: StripPoint[][];
  drawn: number;
  /** While a guide is dragged the strip's scale stays. */
  settled: boolean;
}

class Strip {
  private readonly parts: ReturnType<typeof makeParts>;
  private top = 0;

  constructor(svg: SVGSVGElement) {
    this.parts = makeParts(svg);
  }

  show(shown: boolean): void {
    this.parts.group.style.display = shown ? '' : 'none';
  }

  paint(view: StripView): void {
    const { parts } = this;
    const { scale, heightPx, limit, drawn } = view;
    if (view.settled || this.top === 0) this.top = topOf(view);
    const base = (view.row + 1) * (heightPx + titlePx) - 6;
    const height = heightPx - 8;
    const yPx = (value: number) => base - (Math.max(0, Math.min(value, this.top)) / this.top) * height;
    const place = ({ atM, value }: StripPoint) => ({ xPx: scale.xPx(atM), yPx: yPx(value) });
    const places = (points: readonly StripPoint[]) => points.map(place);
    const ours = view.ours.flatMap((points, load) => (load === drawn ? [] : points));
    const over = (points: readonly StripPoint[]) => points.filter(({ value }) => value > limit);
    const within = (points: readonly StripPoint[]) => points.filter(({ value }) => value <= limit);
    const strong = view.ours[drawn] ?? [];
    parts.base.setAttribute('d', `M${scale.xPx(0)} ${base}H${scale.xPx(scale.lengthM)}`);
    parts.limit.setAttribute('d', `M${scale.xPx(0)} ${yPx(limit)}H${scale.xPx(scale.lengthM)}`);
    parts.start.setAttribute('d', view.start.map((points) => circles(places(points))).join(''));
    parts.others.setAttribute('d', dots(places(within(ours))));
    parts.othersOver.setAttribute('d', dots(places(over(ours))));
    parts.drawnLine.setAttribute('d', polylineOf(places(strong)));
    parts.drawn.setAttribute('d', dots(places(within(strong))));
    parts.drawnOver.setAttribute('d', dots(places(over(strong))));
    setAll(parts.title, { x: scale.xPx(0), y: base - height - 12 });
    setText(parts.title, raisedFractions(view.title));
    parts.above.setAttribute(
      'd',
      aboveMarks([...ours, ...strong, ...view.start.flat()], this.top, scale, base - height),
    );
  }
}

function makeParts(svg: SVGSVGElement) {
  const group = svgNode(svg, 'g', { class: 'strip' });
  const path = (name: string) => svgNode(group, 'path', { class: name });
  return {
    group,
    title: svgNode(group, 'text', { class: 'strip-title' }),
    base: path('strip-base'),
    limit: path('strip-limit'),
    start: path('strip-start'),
    others: path('strip-others'),
    othersOver: path('strip-others over'),
    drawnLine: path('strip-drawn-line'),
    drawn: path('strip-drawn'),
    drawnOver: path('strip-drawn over'),
    above: path('strip-above'),
  };
}

/** The readings that count, where they stand along the rod: those of rings at the guides, the others at mid-span. */
function pointsOf({ fromTipM, reading }: ReadLayout, criterion: Criterion): StripPoint[][] {
  const stations = [0, ...fromTipM];
  return reading.loads.map((load) => {
    const { first, values } = countedValues(criterion, load);
    return values.map((value, i) => ({
      atM: criterion.at === 'ring' ? stations[i + first] : (stations[i] + stations[i + 1]) / 2,
      value,
    }));
  });
}

/** Room for all there is, up to two and a half times the limit; what is more is marked as lying above. */
function topOf({ limit, ours, start }: StripView): number {
  const most = [...ours, ...start].flat().reduce((top, { value }) => Math.max(top, value), 0);
  return Math.min(2.5 * limit, Math.max(1.2 * limit, 1.04 * most));
}

function circles(places: readonly { xPx: number; yPx: number }[]): string {
  return places
    .map(({ xPx, yPx }) => `M${(xPx - 3).toFixed(1)} ${yPx.toFixed(1)}a3 3 0 1 0 6 0a3 3 0 1 0-6 0`)
    .join('');
}

function polylineOf(places: readonly { xPx: number; yPx: number }[]): string {
  return places
    .map(({ xPx, yPx }, i) => `${i === 0 ? 'M' : 'L'}${xPx.toFixed(1)} ${yPx.toFixed(1)}`)
    .join('');
}

function aboveMarks(points: readonly StripPoint[], top: number, scale: RulerScale, yPx: number): string {
  return points
    .filter(({ value }) => value > top * 1.0001)
    .map(({ atM }) => `M${(scale.xPx(atM) - 4).toFixed(1)} ${yPx - 3}l4-5l4 5z`)
    .join('');
}
