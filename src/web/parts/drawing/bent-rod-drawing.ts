import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { axisAt } from '../../../engine/layout/rule-reading.ts';
import { type BendView, type DrawnRod, shownWhole } from './bend-view.ts';
import {
  alongButt,
  fixedPoints,
  gridLines,
  hangM,
  numberMark,
  placesPath,
  reelRadiusM,
  rodOutline,
  shapePath,
  wayOfLine,
} from './bent-rod-shapes.ts';
import { type DrawingFrame, extentOf } from './drawing-frame.ts';
import { placeFanNames } from './fan-names.ts';
import { GapMark } from './gap-mark.ts';
import { inTheWay } from './in-the-way.ts';
import { fanAt, fanSizeFor, onScreen, type PlacePx } from './line-fans.ts';
import { placeLabels } from './place-labels.ts';
import { fanRoom, roomyPx, withRoomAbove } from './room-above.ts';
import { NodePool, setAll, setText, svgNode } from './svg-nodes.ts';
import { WorstLens } from './worst-lens.ts';

/** Where a flag on the bent rod stands, from the front of the grip. */
export interface FlagReading {
  fromTipM: number;
  outM: number;
  upM: number;
  /** How far it hangs below its place under the rod's own weight alone. */
  dropM?: number;
}

/**
 * The rod to scale under one load, the other loads as ghosts. Made once for an svg element; `paint` may be called
 * every frame.
 */
export class BentRodDrawing {
  private readonly svg: SVGSVGElement;
  private readonly parts: ReturnType<typeof makeParts>;
  private readonly gap: GapMark;
  private readonly lens: WorstLens;
  private frame: DrawingFrame | undefined;
  private framedFor = '';
  private view: BendView | undefined;
  private widthPx = 0;
  private mostHeightPx = 0;

  constructor(svg: SVGSVGElement) {
    this.svg = svg;
    this.parts = makeParts(svg);
    this.gap = new GapMark(svg);
    this.lens = new WorstLens(svg);
  }

  /** CSS pixels there are; the drawing's height follows from the rod. */
  resize(widthPx: number, mostHeightPx: number): void {
    if (widthPx === this.widthPx && mostHeightPx === this.mostHeightPx) return;
    this.widthPx = widthPx;
    this.mostHeightPx = mostHeightPx;
    this.framedFor = '';
    if (this.view) this.paint(this.view);
  }

  paint(view: BendView): void {
    this.view = view;
    if (this.widthPx === 0 || view.loads.length === 0) return;
    const frame = this.frameFor(view);
    const drawn = view.loads[view.drawn];
    this.paintGhosts(view, frame);
    this.paintHandle(view.rod, frame);
    this.parts.rod.setAttribute('d', rodOutline(drawn, view.rod, frame));
    this.paintLine(view, drawn, frame);
    this.paintFans(view, drawn, frame);
    this.paintRings(view, drawn, frame);
    this.gap.paint(view, frame);
    this.lens.paint(view, frame, () => inTheWay(this.svg, view, frame));
  }

  /** The station of the drawn rod nearest to a place on the screen; undefined where none is near. */
  stationNear(xPx: number, yPx: number, reachPx: number): number | undefined {
    const { view, frame } = this;
    if (!view || !frame) return undefined;
    const { fromTipM, xM, yM } = view.loads[view.drawn];
    let nearest = reachPx;
    let station: number | undefined;
    for (let i = 0; i < xM.length; i++) {
      const distance = Math.hypot(frame.xPx(xM[i]) - xPx, frame.yPx(yM[i]) - yPx);
      if (distance < nearest) [nearest, station] = [distance, fromTipM[i]];
    }
    return station;
  }

  /** Sets the flag and reads it; the cross lines lead to the level and the plumb through the front of the grip. */
  flag(fromTipM: number): FlagReading | undefined {
    const { view, frame, parts } = this;
    if (!view || !frame) return undefined;
    const at = axisAt(view.loads[view.drawn], fromTipM);
    const [x, y] = [frame.xPx(at.xM), frame.yPx(at.yM)];
    setAll(parts.flagCross, { d: `M${x} ${y}V${frame.yPx(0)}M${x} ${y}H${frame.xPx(0)}` });
    setAll(parts.flagMark, { d: `M${x} ${y}m-5 -5l10 10m0 -10l-10 10` });
    const rest = view.rest ? axisAt(view.rest, fromTipM) : undefined;
    return { fromTipM, outM: at.xM, upM: at.yM, ...(rest ? { dropM: rest.yM - at.yM } : {}) };
  }

  private frameFor(view: BendView): DrawingFrame {
    const wanted = `${this.widthPx} ${this.mostHeightPx} ${view.drawn}`;
    if (this.frame && this.framedFor === wanted && !view.settled) return this.frame;
    const extent = extentOf(shownWhole(view), fixedPoints(view.rod), fanRoom);
    extent.lowYM -= hangM;
    const room = { widthPx: this.widthPx, mostHeightPx: this.mostHeightPx, marginPx: 10 };
    const frame = withRoomAbove(view, extent, room);
    this.frame = frame;
    this.framedFor = wanted;
    setAll(this.svg, {
      viewBox: `0 0 ${frame.widthPx} ${frame.heightPx}`,
      width: frame.widthPx,
      height: frame.heightPx,
    });
    this.paintGrid(view.rod, frame);
    return frame;
  }

  private paintGrid({ grid }: DrawnRod, frame: DrawingFrame): void {
    const lines = gridLines(frame, grid.stepM);
    const isHeavy = (index: number) => index % grid.heavyEvery === 0;
    const path = (wanted: boolean) =>
      lines
        .filter(({ index }) => isHeavy(index) === wanted)
        .map(({ d }) => d)
        .join('');
    this.parts.grid.setAttribute('d', path(false));
    this.parts.gridHeavy.setAttribute('d', path(true));
    const level = frame.yPx(0);
    setAll(this.parts.level, { d: `M0 ${level}H${frame.widthPx}` });
  }

  private paintGhosts(view: BendView, frame: DrawingFrame): void {
    const { ghosts, rest } = this.parts;
    const others = view.loads.filter((_, load) => load !== view.drawn);
    for (const [i, path] of ghosts.take(others.length).entries())
      setAll(path, { d: shapePath(others[i], frame) });
    rest.setAttribute('d', view.rest ? shapePath(view.rest, frame) : '');
  }

  private paintHandle(rod: DrawnRod, frame: DrawingFrame): void {
    const butt = alongButt(rod, -rod.handleM, 0);
    const reel = alongButt(rod, rod.reel.alongM, rod.reel.offsetM);
    const [x, y] = [frame.xPx(butt.xM), frame.yPx(butt.yM)];
    this.parts.handle.setAttribute('d', `M${x} ${y}L${frame.xPx(0)} ${frame.yPx(0)}`);
    setAll(this.parts.reel, {
      cx: frame.xPx(reel.xM),
      cy: frame.yPx(reel.yM),
      r: reelRadiusM * frame.pxPerM,
    });
  }

  private paintLine(view: BendView, drawn: RuledLoad, frame: DrawingFrame): void {
    const { rod } = view;
    const from = rod.loadBy === 'tied' ? { xM: drawn.xM[0], yM: drawn.yM[0] } : drawn.rings[0];
    const pull = rod.pullAngleRad[view.drawn];
    const end = { xM: from.xM + hangM * Math.cos(pull), yM: from.yM + hangM * Math.sin(pull) };
    const { way, touched } = wayOfLine(view);
    this.parts.line.setAttribute('d', placesPath(rod.loadBy === 'tied' ? way : [...way, end], frame));
    this.parts.touch.setAttribute('d', touched.map((places) => placesPath(places, frame)).join(''));
    const [x, y] = [frame.xPx(end.xM), frame.yPx(end.yM)];
    const hang = `M${frame.xPx(from.xM)} ${frame.yPx(from.yM)}L${x} ${y}`;
    this.parts.tied.setAttribute('d', rod.loadBy === 'tied' ? hang : '');
    this.parts.weight.setAttribute('d', `M${x - 4} ${y}h8l3 10h-14z`);
    const anchor = x > frame.widthPx - 90 ? 'end' : 'start';
    setAll(this.parts.weightName, { x: anchor === 'end' ? x - 11 : x + 11, y: y + 9, 'text-anchor': anchor });
    setText(this.parts.weightName, rod.loadNames[view.drawn]);
  }

  /** At every guide whose line angle counts; the reel and the hand set the last one's. */
  private paintFans({ rod, attention, active }: BendView, { rings }: RuledLoad, frame: DrawingFrame): void {
    const { fanLimits, fanTurns, fanNames } = this.parts;
    const size = fanSizeFor(frame.widthPx);
    const fans = rings.slice(1, -1).map((ring, i) => {
      const line = [rings[i + 2], ring, rings[i]].map((one) => onScreen(one, frame));
      return fanAt(line as [PlacePx, PlacePx, PlacePx], ring.lineAngleRad, rod.limitRad, size);
    });
    const [limits, turns, names] = [fanLimits, fanTurns, fanNames].map((pool) => pool.take(fans.length));
    const isActive = (guide: number) => attention.has(guide) || active === guide;
    const states = fans.map((fan, i) => (fan?.isOver ? ' over' : isActive(i + 1) ? ' active' : ''));
    const texts = fans.map((fan, i) =>
      fan && (frame.widthPx > roomyPx || states[i] !== '') ? rod.angle(rings[i + 1].lineAngleRad) : '',
    );
    placeFanNames(fans, texts, frame, size).forEach((place, i) => {
      setAll(limits[i], { d: fans[i]?.limit ?? '', class: `fan-limit${states[i]}` });
      setAll(turns[i], { d: fans[i]?.turn ?? '', class: `fan-turn${states[i]}` });
      setText(names[i], place ? texts[i] : '');
      if (place) setAll(names[i], { x: place.xPx, y: place.yPx + 4, class: `fan-name${states[i]}` });
    });
  }

  private paintRings(view: BendView, drawn: RuledLoad, frame: DrawingFrame): void {
    const { rings, numbers, leaders } = this.parts;
    const marks = drawn.rings.map((ring, k) => numberMark(view, drawn, frame, k, ring));
    const lines = Array.from(drawn.xM, (x, i) => ({ xPx: frame.xPx(x), yPx: frame.yPx(drawn.yM[i]) }));
    const places = placeLabels(marks.slice(1), { ...frame, lines });
    const circles = rings.take(drawn.rings.length);
    const texts = numbers.take(places.length);
    let leaderPath = '';
    drawn.rings.forEach((ring, k) => {
      const state = view.attention.has(k) ? ' attention' : view.active === k ? ' active' : '';
      setAll(circles[k], { cx: frame.xPx(ring.xM), cy: frame.yPx(ring.yM), class: `bend-ring${state}` });
      if (k === 0) return;
      const place = places[k - 1];
      const text = texts[k - 1];
      setText(text, place ? String(k) : '');
      if (!place) return;
      setAll(text, { x: place.xPx, y: place.yPx + 4, class: `bend-number${state}` });
      if (place.distancePx > 20) {
        leaderPath += `M${marks[k].xPx} ${marks[k].yPx}L${place.xPx} ${place.yPx}`;
      }
    });
    leaders.setAttribute('d', leaderPath);
  }
}

function makeParts(svg: SVGSVGElement) {
  svg.replaceChildren();
  const path = (name: string) => svgNode(svg, 'path', { class: name });
  const group = (name: string) => svgNode(svg, 'g', { class: name });
  return {
    grid: path('bend-grid'),
    gridHeavy: path('bend-grid heavy'),
    level: path('bend-level'),
    rest: path('bend-rest'),
    ghosts: new NodePool(group('bend-ghosts'), 'path'),
    reel: svgNode(svg, 'circle', { class: 'bend-reel' }),
    handle: path('bend-handle'),
    rod: path('bend-rod'),
    line: path('bend-line'),
    touch: path('bend-touch'),
    tied: path('bend-tied'),
    weight: path('bend-weight'),
    weightName: svgNode(svg, 'text', { class: 'bend-weight-name' }),
    fanLimits: new NodePool(group('bend-fan-limits'), 'path'),
    fanTurns: new NodePool(group('bend-fans'), 'path'),
    fanNames: new NodePool(group('bend-fan-names'), 'text', { 'text-anchor': 'middle' }),
    leaders: path('bend-leaders'),
    rings: new NodePool(group('bend-rings'), 'circle', { r: 3.5 }),
    numbers: new NodePool(group('bend-numbers'), 'text', { 'text-anchor': 'middle' }),
    flagCross: path('bend-flag-cross'),
    flagMark: path('bend-flag-mark'),
  };
}
