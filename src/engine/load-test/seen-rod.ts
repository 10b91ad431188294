/**
 * What a photograph shows of a taped-up rod: where every ring stands on the blank, how far the line turns in it, how
 * far the blank stands off the line in every span; each with a 95 % ± from the picture's own unevenness.
 *
 * Frame and definitions as in bend/reading.ts: a ring's line angle is the change of the line's direction in it; a
 * gap is the distance of the axis from the straight line between two rings, less the rings' height there. A ring
 * that was tapped stands where it was tapped; one that was not, on the curve at its mark, square off by its height.
 * ± of an angle with errors ε of every ring's centre and spans a, b:  ε √(1/a² + 1/b² + (1/a + 1/b)²).
 * A smooth drift of the picture moves neighbouring rings alike and is left out.
 */

import type { Side } from '../bend/bend-request.ts';
import { sideSign } from '../bend/bend-request.ts';
import type { EvenCurve } from '../stiffness/curve-moment.ts';
import { ringCentre } from '../stiffness/curve-moment.ts';
import type { PlanePoint } from '../stiffness/curve-places.ts';
import { evenCurve } from '../stiffness/even-curve.ts';

interface SeenRodRequest {
  /** Hold to tip, y up; the rod may point either way. */
  points: readonly PlanePoint[];
  clampFromTipM: number;
  /** Tip-top first, then the guides: the mark, the height off the axis, and the ring's centre where it was tapped. */
  rings: readonly { fromTipM: number; ringHeightM: number; seen?: PlanePoint }[];
  side: Side;
  /** Direction in which the line leaves the tip-top; -π/2 is straight down. */
  pullAngleRad: number;
  localSigmaM?: number;
}
export interface Measured {
  value: number;
  /** 95 %. */
  plusMinus: number;
}
interface SeenRing {
  tapped: boolean;
  fromTipM: Measured;
  /** Undefined at the last guide: its line runs to the reel. */
  lineAngleRad: Measured | undefined;
}
export interface SeenRod {
  rings: SeenRing[];
  /** Span i from ring i to ring i + 1, none behind the last guide. */
  gapM: Measured[];
  tip: PlanePoint;
}

/** Unevenness of the trace and of a tap on a ring's middle: judgement from rendered photographs. */
const seenDefaults = { localSigmaM: 0.0008, ringSigmaM: 0.0012, stationSigmaM: 0.0015 };

export function seenRod(request: SeenRodRequest): SeenRod {
  const { clampFromTipM, side, localSigmaM = seenDefaults.localSigmaM } = request;
  const mirrored = request.points[request.points.length - 1].xM < request.points[0].xM;
  const even = evenCurve(request.points, clampFromTipM, { stepM: 0.005, windowM: 0.05 });
  const centres = request.rings.map(({ fromTipM, ringHeightM, seen }) =>
    seen
      ? { xM: mirrored ? -seen.xM : seen.xM, yM: seen.yM }
      : ringCentre(even, fromTipM, ringHeightM, { side }),
  );
  const ends = request.rings.map(({ seen }) => (seen ? seenDefaults.ringSigmaM : localSigmaM));
  const rings = request.rings.map((ring, i): SeenRing => {
    const place = ring.seen ? stationOf(even, centres[i], ring.fromTipM) : ring.fromTipM;
    const sigma = ring.seen ? Math.hypot(seenDefaults.stationSigmaM, 0.001 * place) : 0;
    return {
      tapped: ring.seen !== undefined,
      fromTipM: { value: i === 0 ? 0 : place, plusMinus: i === 0 ? 0 : 1.96 * sigma },
      lineAngleRad: angleAt(centres, ends, i, request.pullAngleRad),
    };
  });
  const gapM = rings
    .slice(1)
    .map((_, i) =>
      gapOf(even, request, [centres[i], centres[i + 1]], [rings[i], rings[i + 1]], i, localSigmaM),
    );
  return { rings, gapM, tip: { xM: even.xM[0], yM: even.yM[0] } };
}

/** Where on the curve the ring's centre stands square off it. */
function stationOf({ stepM, xM, yM, angleRad }: EvenCurve, at: PlanePoint, guessM: number): number {
  let best = Number.POSITIVE_INFINITY;
  let station = guessM;
  for (let i = 0; i < xM.length; i++) {
    const [dx, dy] = [at.xM - xM[i], at.yM - yM[i]];
    const away = Math.hypot(dx, dy);
    if (away >= best) continue;
    best = away;
    // the direction runs to the tip: what lies ahead is nearer to it
    station = i * stepM - (dx * Math.cos(angleRad[i]) + dy * Math.sin(angleRad[i]));
  }
  return Math.max(0, station);
}

function angleAt(
  centres: readonly PlanePoint[],
  sigmas: readonly number[],
  ring: number,
  pullAngleRad: number,
): Measured | undefined {
  if (ring + 1 >= centres.length) return undefined;
  const here = centres[ring];
  const below = centres[ring + 1];
  const incoming = { x: here.xM - below.xM, y: here.yM - below.yM };
  const b = Math.hypot(incoming.x, incoming.y);
  const ahead = ring > 0 ? centres[ring - 1] : undefined;
  const outgoing = ahead
    ? { x: ahead.xM - here.xM, y: ahead.yM - here.yM }
    : { x: Math.cos(pullAngleRad), y: Math.sin(pullAngleRad) };
  const overA = ahead ? 1 / Math.hypot(outgoing.x, outgoing.y) : 0;
  const turn = Math.atan2(
    incoming.x * outgoing.y - incoming.y * outgoing.x,
    incoming.x * outgoing.x + incoming.y * outgoing.y,
  );
  const sigma = Math.hypot(
    (sigmas[ring - 1] ?? 0) * overA,
    sigmas[ring + 1] / b,
    sigmas[ring] * (overA + 1 / b),
  );
  return { value: Math.abs(turn), plusMinus: 1.96 * sigma };
}

function gapOf(
  { stepM, xM, yM }: EvenCurve,
  { rings, side }: SeenRodRequest,
  [tipSide, buttSide]: [PlanePoint, PlanePoint],
  [high, low]: [SeenRing, SeenRing],
  span: number,
  localSigmaM: number,
): Measured {
  const [dx, dy] = [tipSide.xM - buttSide.xM, tipSide.yM - buttSide.yM];
  const chord = Math.hypot(dx, dy) || 1;
  const [highM, lowM] = [rings[span].ringHeightM, rings[span + 1].ringHeightM];
  let widest = 0;
  for (let i = 0; i < xM.length; i++) {
    const s = i * stepM;
    if (s < high.fromTipM.value || s > low.fromTipM.value) continue;
    const [px, py] = [xM[i] - buttSide.xM, yM[i] - buttSide.yM];
    const along = Math.min(1, Math.max(0, (px * dx + py * dy) / chord ** 2));
    const off = (-sideSign(side) * (py * dx - px * dy)) / chord;
    widest = Math.max(widest, off - (lowM + along * (highM - lowM)));
  }
  const sigma = Math.hypot(localSigmaM, Math.SQRT1_2 * seenDefaults.ringSigmaM);
  return { value: widest, plusMinus: 1.96 * sigma };
}
