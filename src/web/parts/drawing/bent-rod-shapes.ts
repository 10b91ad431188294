/** The shapes of the bent rod on the screen, from the places the engine gives. */

import { lineOverBlank, type PlaceOfLine } from '../../../engine/layout/line-over-blank.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { valueAt } from '../../../engine/numerics/piecewise-linear.ts';
import type { BendView, DrawnRod } from './bend-view.ts';
import type { DrawingFrame } from './drawing-frame.ts';
import type { LabelledMark } from './place-labels.ts';
import { polyline } from './svg-nodes.ts';

/** Line that hangs free below the tip, and the reel's radius, as drawn. */
export const hangM = 0.13;
export const reelRadiusM = 0.036;

/** The blank as an outline, its diameter to scale but never thinner than can be seen. */
export function rodOutline(
  { fromTipM, xM, yM, angleRad }: RuledLoad,
  rod: DrawnRod,
  frame: DrawingFrame,
): string {
  const count = xM.length;
  const px = new Float64Array(2 * count);
  const py = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    const half = 0.5 * Math.max(1.3, 1 + valueAt(rod.outside, fromTipM[i]) * frame.pxPerM);
    const nx = Math.sin(angleRad[i]) * half;
    const ny = -Math.cos(angleRad[i]) * half;
    const [x, y] = [frame.xPx(xM[i]), frame.yPx(yM[i])];
    px[i] = x + nx;
    py[i] = y + ny;
    px[2 * count - 1 - i] = x - nx;
    py[2 * count - 1 - i] = y - ny;
  }
  return `${polyline(px, py)}Z`;
}

export function placesPath(places: readonly PlaceOfLine[], frame: DrawingFrame): string {
  return polyline(
    places.map(({ xM }) => frame.xPx(xM)),
    places.map(({ yM }) => frame.yPx(yM)),
  );
}

export function shapePath({ xM, yM }: RuledLoad, frame: DrawingFrame): string {
  return polyline(
    Array.from(xM, (x) => frame.xPx(x)),
    Array.from(yM, (y) => frame.yPx(y)),
    2,
  );
}

/** A guide's number stands on the line's side; the fans stand on the other. The rod's plane is seen from behind. */
export function numberMark(
  view: BendView,
  drawn: RuledLoad,
  frame: DrawingFrame,
  k: number,
  ring: { xM: number; yM: number },
): LabelledMark {
  const span = Math.min(k, drawn.rings.length - 2);
  const [tipSide, buttSide] = [drawn.rings[span], drawn.rings[span + 1]];
  const along = Math.hypot(tipSide.xM - buttSide.xM, tipSide.yM - buttSide.yM);
  const away = view.rod.side === 'under' ? -1 : 1;
  return {
    xPx: frame.xPx(ring.xM),
    yPx: frame.yPx(ring.yM),
    outX: (away * (tipSide.yM - buttSide.yM)) / along,
    outY: (-away * (tipSide.xM - buttSide.xM)) / along,
    widthPx: k > 9 ? 15 : 8,
    heightPx: 12,
    first: view.attention.has(k) || view.active === k,
  };
}

/** From the reel to the tip-top, over the blank where it lies on it; `touched` are those stretches. */
export function wayOfLine(view: BendView): { way: PlaceOfLine[]; touched: PlaceOfLine[][] } {
  const { rod, ringFromTipM } = view;
  const drawn = view.loads[view.drawn];
  const reel = alongButt(rod, rod.reel.alongM, rod.reel.offsetM);
  if (!ringFromTipM) return { way: [reel, ...[...drawn.rings].reverse()], touched: [] };
  const stretches = lineOverBlank(drawn, ringFromTipM, reel, rod.outside);
  const fromTip = drawn.rings.flatMap((ring, k) => [ring, ...stretches[k]]);
  return { way: [reel, ...fromTip.reverse()], touched: stretches.filter((places) => places.length > 1) };
}

/** A point given along the butt's axis and off it to the reel's side. */
export function alongButt({ buttAngleRad, reelSide }: DrawnRod, alongM: number, offsetM: number) {
  const off = reelSide === 'over' ? offsetM : -offsetM;
  const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  return { xM: alongM * c - off * s, yM: alongM * s + off * c };
}

export function fixedPoints(rod: DrawnRod) {
  const reel = alongButt(rod, rod.reel.alongM, rod.reel.offsetM + reelRadiusM);
  return [alongButt(rod, -rod.handleM, 0), reel, { xM: 0, yM: 0 }];
}

export function gridLines(frame: DrawingFrame, stepM: number): { index: number; d: string }[] {
  const lines: { index: number; d: string }[] = [];
  const fromX = Math.ceil(frame.xM(frame.widthPx) / stepM);
  for (let i = fromX; frame.xPx(i * stepM) >= 0; i++) {
    lines.push({ index: i, d: `M${frame.xPx(i * stepM).toFixed(1)} 0V${frame.heightPx}` });
  }
  const fromY = Math.ceil(frame.yM(frame.heightPx) / stepM);
  for (let i = fromY; frame.yPx(i * stepM) >= 0; i++) {
    lines.push({ index: i, d: `M0 ${frame.yPx(i * stepM).toFixed(1)}H${frame.widthPx}` });
  }
  return lines;
}
