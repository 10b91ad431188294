import { raisedFractions } from '../../parts/drawing/fraction-text.ts';
import { setAll, setText } from '../../parts/drawing/svg-nodes.ts';
import type { RulerModel } from './ruler-model.ts';
import {
  blankOutline,
  type GuideNodes,
  makeGuide,
  makeParts,
  numberRows,
  placeZones,
  reachPx,
  rulerHeightPx,
  rulerY,
} from './ruler-nodes.ts';
import { type RulerScale, rulerScale, rulerTicks } from './ruler-scale.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface RulerView {
  frame: SheetFrame;
  /** Guides that need the builder's attention. */
  attention: ReadonlySet<number>;
}

/** Made once for an svg element; `paint` may be called every frame. Each guide is a slider of its own. */
export class RulerDrawing {
  private readonly svg: SVGSVGElement;
  private readonly parts: ReturnType<typeof makeParts>;
  private readonly guides: GuideNodes[] = [];
  private model: RulerModel | undefined;
  private scale: RulerScale | undefined;

  constructor(svg: SVGSVGElement) {
    this.svg = svg;
    this.parts = makeParts(svg);
  }

  /** Draws what stays: blank, ferrules, kept-free zones, ticks, the start's marks, slack. */
  lay(model: RulerModel, widthPx: number): void {
    this.model = model;
    const scale = rulerScale(widthPx, model.lengthM);
    this.scale = scale;
    setAll(this.svg, { viewBox: `0 0 ${widthPx} ${rulerHeightPx}`, width: widthPx, height: rulerHeightPx });
    const { parts } = this;
    parts.blank.setAttribute('d', blankOutline(model, scale));
    const butt = scale.xPx(model.lengthM);
    parts.grip.setAttribute('d', `M${scale.xPx(model.gripFromTipM)} ${rulerY.rod}H${butt}`);
    placeZones(parts.keepOut, model.keepOut, scale, { y: rulerY.rod - 11, height: 22 });
    placeZones(parts.ferrules, model.ferrules, scale, { y: rulerY.rod - 6, height: 12 });
    placeZones(parts.slack, model.slack ?? [], scale, { y: rulerY.slack, height: 7 });
    const starts = parts.starts.take(model.startFromTipM.length);
    model.startFromTipM.forEach((at, i) => {
      setAll(starts[i], { cx: scale.xPx(at), cy: rulerY.start });
    });
    this.layTicks(model, scale);
    this.laySections(model, scale);
  }

  paint({ frame, attention }: RulerView): void {
    const { model, scale } = this;
    if (!model || !scale) return;
    const { fromTipM } = frame;
    while (this.guides.length < fromTipM.length) {
      this.guides.push(makeGuide(this.parts.guides, this.guides.length));
    }
    const rows = numberRows(fromTipM.map(scale.xPx));
    this.guides.forEach((nodes, guide) => {
      const there = guide < fromTipM.length;
      nodes.group.style.display = there ? '' : 'none';
      if (there) this.paintGuide(nodes, model, scale, { frame, attention }, guide, rows[guide]);
    });
    this.paintIntervals(model, scale, fromTipM);
  }

  /** The station under a place on the screen. */
  stationAt(clientX: number): number {
    return this.scale?.fromTipM(clientX - this.svg.getBoundingClientRect().left) ?? 0;
  }

  focus(guide: number): void {
    this.guides[guide]?.group.focus();
  }

  private paintGuide(
    nodes: GuideNodes,
    model: RulerModel,
    scale: RulerScale,
    { frame, attention }: RulerView,
    guide: number,
    row: number,
  ): void {
    const { fromTipM } = frame;
    const x = scale.xPx(fromTipM[guide]);
    const left = guide > 0 ? (scale.xPx(fromTipM[guide - 1]) + x) / 2 : x - reachPx;
    const right = guide + 1 < fromTipM.length ? (scale.xPx(fromTipM[guide + 1]) + x) / 2 : x + reachPx;
    const from = Math.max(left, x - reachPx);
    const state = [
      attention.has(guide) ? 'attention' : '',
      frame.active === guide ? 'active' : '',
      model.pinned[guide] ? 'pinned' : '',
    ].join(' ');
    setAll(nodes.hit, { x: from, width: Math.max(1, Math.min(right, x + reachPx) - from) });
    nodes.mark.setAttribute('d', `M${x} ${rulerY.mark}V${rulerY.rod + 12}`);
    setAll(nodes.pin, { transform: `translate(${x} ${rulerY.rod + 15})` });
    setAll(nodes.number, { x, y: rulerY.numbers[row] });
    setAll(nodes.focus, { x: x - 12, width: 24 });
    setAll(nodes.group, {
      class: `ruler-guide ${state}`,
      'aria-label': `guide ${guide + 1}${model.pinned[guide] ? ', pinned' : ''}`,
      'aria-valuemin': 0,
      'aria-valuemax': (model.lengthM * 1000).toFixed(0),
      'aria-valuenow': (fromTipM[guide] * 1000).toFixed(1),
      'aria-valuetext': model.describe(frame, guide).replaceAll('⁄', '/'),
    });
  }

  private paintIntervals(model: RulerModel, scale: RulerScale, fromTipM: readonly number[]): void {
    const texts = this.parts.intervals.take(fromTipM.length);
    fromTipM.forEach((at, guide) => {
      const before = fromTipM[guide - 1] ?? 0;
      const label = raisedFractions(model.short(at - before));
      const room = scale.xPx(at) - scale.xPx(before);
      setAll(texts[guide], { x: (scale.xPx(at) + scale.xPx(before)) / 2 });
      setText(texts[guide], room > label.length * 6.4 + 18 ? label : '');
    });
  }

  private layTicks(model: RulerModel, scale: RulerScale): void {
    const ticks = rulerTicks(scale, model.system);
    const path = ticks.map(({ fromTipM, rank }) => `M${scale.xPx(fromTipM)} ${rulerY.ticks}v${5 + 4 * rank}`);
    this.parts.ticks.setAttribute('d', path.join(''));
    const numbered = ticks.filter(({ label }) => label !== undefined);
    const labels = this.parts.tickNames.take(numbered.length);
    numbered.forEach(({ fromTipM, label }, i) => {
      setAll(labels[i], { x: scale.xPx(fromTipM), y: rulerY.tickText });
      setText(labels[i], i === 0 ? `0 ${model.system === 'inch' ? 'in' : 'mm'}` : (label ?? ''));
      labels[i].setAttribute('text-anchor', i === 0 ? 'start' : 'middle');
      if (i === 0) setAll(labels[i], { x: scale.xPx(0) - 3 });
    });
  }

  private laySections({ sections }: RulerModel, scale: RulerScale): void {
    const texts = this.parts.sections.take(sections.length);
    sections.forEach(({ name, visible }, i) => {
      const [from, to] = [scale.xPx(visible.fromTipM), scale.xPx(visible.toTipM)];
      setAll(texts[i], { x: (from + to) / 2, y: rulerY.tickText + 18 });
      setText(texts[i], name.length * 6.4 + 8 < to - from ? name : '');
    });
  }
}
