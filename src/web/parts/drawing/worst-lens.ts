/**
 * A lens on the worst reading of the drawn load, square on the screen as the rod lies: the ring with the turn of its
 * line as a wedge true to angle, or the middle of a span with its gap as a dimension.
 */
import { criterionOf } from '../../../engine/layout/criteria.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import type { BendView } from './bend-view.ts';
import { rodOutline, shapePath } from './bent-rod-shapes.ts';
import type { DrawingFrame } from './drawing-frame.ts';
import { raisedFractions } from './fraction-text.ts';
import { dimensionPath, gapDimension, nearestOn } from './gap-dimension.ts';
import { type Lens, lensPlace, type Spot } from './lens-place.ts';
import { fanAt, onScreen, type PlacePx } from './line-fans.ts';
import { polyline, setAll, setText, svgNode } from './svg-nodes.ts';

export class WorstLens {
  private readonly parts: ReturnType<typeof makeParts>;
  private place: Lens | undefined;
  private placedFor = '';

  constructor(svg: SVGSVGElement) {
    this.parts = makeParts(svg);
  }

  /** `drawn`: what it must not cover. */
  paint(view: BendView, frame: DrawingFrame, drawn: () => readonly Spot[]): void {
    const load = view.loads[view.drawn];
    const sight = sightOf(load);
    const near = sight && onScreen(sight.at, frame);
    if (near) this.keepPlace(view, near, frame, drawn);
    this.parts.group.style.display = near && this.place ? '' : 'none';
    if (!sight || !near || !this.place) return;
    const { place: lens, parts } = this;
    const inside = through(lens, sight);
    this.paintGlass(lens, near, load.worstAt.ratio > 1 ? ' over' : '');
    parts.rod.setAttribute('d', rodOutline(load, view.rod, inside));
    parts.axis.setAttribute('d', shapePath(load, inside));
    const rings = load.rings.map((ring) => onScreen(ring, inside));
    parts.line.setAttribute(
      'd',
      polyline(
        rings.map(({ x }) => x),
        rings.map(({ y }) => y),
      ),
    );
    parts.feet.setAttribute('d', load.rings.map((ring) => footPath(load, ring, inside)).join(''));
    parts.rings.setAttribute('d', rings.map((ring) => circlePath(ring, 5)).join(''));
    const outwards = sight.ofRing ? this.paintTurn(view, rings, lens) : this.paintGap(load, inside);
    this.paintWords(view, lens, sight.ofRing, outwards);
  }

  /** The place stays while a guide is dragged. */
  private keepPlace(view: BendView, near: Spot, frame: DrawingFrame, drawn: () => readonly Spot[]): void {
    const { worstAt } = view.loads[view.drawn];
    const wanted = [frame.widthPx, frame.heightPx, view.drawn, worstAt.metric, worstAt.index].join(' ');
    if (wanted === this.placedFor || (!view.settled && this.placedFor !== '')) return;
    this.place = lensPlace(near, drawn(), frame);
    this.placedFor = wanted;
  }

  private paintGlass({ x, y, radius }: Lens, near: Spot, state: string): void {
    const { group, glass, clip, leader } = this.parts;
    group.setAttribute('class', `lens${state}`);
    for (const circle of [glass, clip]) setAll(circle, { cx: x, cy: y, r: radius });
    const way = Math.atan2(near.y - y, near.x - x);
    leader.setAttribute(
      'd',
      `M${near.x} ${near.y}L${x + radius * Math.cos(way)} ${y + radius * Math.sin(way)}`,
    );
  }

  /** Returns the way it opens to on the screen. */
  private paintTurn({ rod, loads, drawn }: BendView, rings: readonly PlacePx[], lens: Lens): number {
    const load = loads[drawn];
    const { index } = load.worstAt;
    const line: [PlacePx, PlacePx, PlacePx] = [rings[index + 1], rings[index], rings[index - 1]];
    const size = { clearPx: 1, lengthPx: 0.84 * lens.radius };
    const fan = fanAt(line, load.rings[index].lineAngleRad, rod.limitRad, size);
    this.parts.turn.setAttribute('d', fan?.turn ?? '');
    this.parts.limit.setAttribute('d', fan?.limit ?? '');
    this.parts.gap.setAttribute('d', '');
    return fan ? Math.atan2(fan.label.y - lens.y, fan.label.x - lens.x) : -Math.PI / 2;
  }

  private paintGap(load: RuledLoad, inside: DrawingFrame): number {
    const { line, blank } = gapDimension(load, load.worstAt.index);
    const [a, b] = [onScreen(line, inside), onScreen(blank, inside)];
    this.parts.gap.setAttribute('d', dimensionPath(a, b, 9));
    this.parts.turn.setAttribute('d', '');
    this.parts.limit.setAttribute('d', '');
    return Math.atan2(b.y - a.y, b.x - a.x);
  }

  /** On the side that the wedge, or the blank, leaves free; the longer words of a span under it, across the glass. */
  private paintWords({ rod, loads, drawn }: BendView, lens: Lens, ofRing: boolean, outwards: number): void {
    const { x, y, radius } = lens;
    const { value, limit, place } = rod.worst(loads[drawn]);
    const { figure, beside, name } = this.parts;
    const middle = { x: x - 0.5 * radius * Math.cos(outwards), y: y - 0.52 * radius * Math.sin(outwards) };
    const tooLow = middle.y + 18 - y - lowestFor(limit, radius);
    // no higher than clear of the ring in the middle
    if (ofRing) middle.y -= Math.max(0, Math.min(tooLow, middle.y - y - 21));
    const under = middle.y + 18;
    const words = ofRing ? { x: middle.x, y: under } : { x, y: Math.max(under, y + 0.45 * radius) };
    const isNamed = fitsInGlass(place, words.y + 15 - y, radius);
    // the lowest words have the least room: all keep to where those fit
    const room = isNamed
      ? sidewaysRoom(place, words.y + 15 - y, radius)
      : Math.max(0, sidewaysRoom(limit, words.y - y, radius));
    const large = Math.max(0, sidewaysRoom(value, middle.y + 2 - y, radius, largeLetterPx));
    setAll(figure, { x: within(Math.min(room, large), middle.x, x), y: middle.y + 2 });
    setAll(beside, { x: within(room, words.x, x), y: words.y });
    setAll(name, { x: within(room, words.x, x), y: words.y + 15 });
    setText(figure, raisedFractions(value));
    setText(beside, raisedFractions(ofRing ? limit : besideFor(limit, words.y - y, radius)));
    setText(name, isNamed ? place : '');
  }
}

/** Whether words fit between the glass's edges, so far from its middle. */
export function fitsInGlass(words: string, downPx: number, radius: number): boolean {
  return sidewaysRoom(words, downPx, radius) > 0;
}

/** How far from the glass's middle, to either side, words so far below it may stand. */
export function sidewaysRoom(words: string, downPx: number, radius: number, letter = letterPx): number {
  const reach = Math.abs(downPx) + descentPx;
  return Math.sqrt(Math.max(0, radius ** 2 - reach ** 2)) - edgePx - (letter * words.length) / 2;
}
const descentPx = 4;
const edgePx = 2;

/** How far below the glass's middle words may stand at the most. */
export function lowestFor(words: string, radius: number): number {
  const half = (letterPx * words.length) / 2 + edgePx;
  return Math.sqrt(Math.max(0, radius ** 2 - half ** 2)) - descentPx;
}

/** `bend added, limit 0.051 1/m`; where the glass is too small for it, the limit alone. */
export function besideFor(limit: string, downPx: number, radius: number): string {
  return fitsInGlass(limit, downPx, radius) ? limit : (limit.split(', ').at(-1) ?? '');
}
/** Of the small letters in the lens, on the average. */
const letterPx = 6.6;
const largeLetterPx = 13.5;

const within = (room: number, wanted: number, middle: number) =>
  middle + Math.max(-room, Math.min(room, wanted - middle));

interface Sight {
  at: { xM: number; yM: number };
  ofRing: boolean;
  /** How much of the rod is seen. */
  acrossM: number;
}

/** What the lens looks at; undefined where nothing is read. */
function sightOf(load: RuledLoad): Sight | undefined {
  const { worstAt, rings } = load;
  if (worstAt.index < 0 || load.status !== 'converged') return undefined;
  if (criterionOf(worstAt.metric).at === 'ring') {
    const ring = rings[worstAt.index];
    const foot = nearestOn(load, ring);
    const heightM = Math.hypot(ring.xM - foot.xM, ring.yM - foot.yM);
    return { at: ring, ofRing: true, acrossM: Math.max(0.07, 5 * heightM) };
  }
  const { line, blank } = gapDimension(load, worstAt.index);
  const gapM = Math.hypot(line.xM - blank.xM, line.yM - blank.yM);
  const at = { xM: (line.xM + blank.xM) / 2, yM: (line.yM + blank.yM) / 2 };
  return { at, ofRing: false, acrossM: Math.max(0.06, 4 * gapM) };
}

/** The rod's plane as it is seen in the lens. */
function through({ x, y, radius }: Lens, { at, acrossM }: Sight): DrawingFrame {
  const pxPerM = (2 * radius) / acrossM;
  return {
    widthPx: 2 * radius,
    heightPx: 2 * radius,
    pxPerM,
    xPx: (xM) => x - (xM - at.xM) * pxPerM,
    yPx: (yM) => y - (yM - at.yM) * pxPerM,
    xM: (px) => at.xM - (px - x) / pxPerM,
    yM: (px) => at.yM - (px - y) / pxPerM,
  };
}

/** A guide as a wire: from the blank up into its ring and down again. */
function footPath(load: RuledLoad, ring: { xM: number; yM: number }, inside: DrawingFrame): string {
  const [at, foot] = [onScreen(ring, inside), onScreen(nearestOn(load, ring), inside)];
  const way = Math.atan2(foot.y - at.y, foot.x - at.x);
  const spread = 0.8 * Math.hypot(foot.x - at.x, foot.y - at.y);
  const [sx, sy] = [-Math.sin(way) * spread, Math.cos(way) * spread];
  return `M${foot.x + sx} ${foot.y + sy}L${at.x} ${at.y}L${foot.x - sx} ${foot.y - sy}`;
}

const circlePath = ({ x, y }: PlacePx, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;

let lenses = 0;

function makeParts(svg: SVGSVGElement) {
  const id = `lens-${++lenses}`;
  const group = svgNode(svg, 'g', { class: 'lens' });
  const clip = svgNode(svgNode(svgNode(group, 'defs'), 'clipPath', { id }), 'circle');
  const leader = svgNode(group, 'path', { class: 'lens-leader' });
  const glass = svgNode(group, 'circle', { class: 'lens-glass' });
  const seen = svgNode(group, 'g', { 'clip-path': `url(#${id})` });
  const path = (name: string) => svgNode(seen, 'path', { class: name });
  const text = (name: string) => svgNode(group, 'text', { class: name, 'text-anchor': 'middle' });
  return {
    group,
    clip,
    glass,
    leader,
    limit: path('lens-limit'),
    turn: path('lens-turn'),
    rod: path('lens-rod'),
    axis: path('lens-axis'),
    line: path('lens-line'),
    feet: path('lens-feet'),
    rings: path('lens-rings'),
    gap: path('lens-gap'),
    figure: text('lens-figure'),
    beside: text('lens-beside'),
    name: text('lens-name'),
  };
}
