/**
 * Other bent rods in the picture, and a trace that runs from one over to another.
 *
 * Every long bent line of the picture is measured as the blank is: both its edges, and a straight taper by vote. A rod
 * tapers by half or more, has a butt about as thick as the traced one's and stands out about as well; a cable keeps its
 * width, a shelf's edge is straight, a shadow is the traced rod over again, moved and fainter. A rod that shares a
 * stretch with the trace at one of its ends and then goes its own way is what the trace ought to have followed.
 * Assumption: the other rod is bent and its larger part is in the picture.
 */
import type { Point } from '../camera/homography.ts';
import type { Pixels } from '../pixels.ts';
import { type Centreline, centrelineOf } from './centreline.ts';
import type { CoarseRidges } from './coarse-path.ts';
import type { RefinedCentreline } from './refine-centreline.ts';
import { ridgeTracks, trackChoice } from './ridge-tracks.ts';
import { type RodLook, rodLook } from './rod-look.ts';

export interface OtherRodsChoice {
  /** Shares of the traced length: shortest rod, and shortest stretch that leaves the trace. */
  leastShare: number;
  leaveShare: number;
  /** Largest distance from the chord, over the chord. */
  leastBow: number;
  leastTaper: number;
  leastSeen: number;
  /** Share of twelve equal parts whose own width is that of the straight taper, to a fifth or half a pixel. */
  leastEven: number;
  /** It must stand so far from the trace somewhere, over the traced length: the line and the shadow do not. */
  leastAway: number;
  /** Thick end over the traced one's. */
  thick: { least: number; most: number };
  /** Edge slope over the traced one's. */
  leastContrast: number;
  /** A shadow: the trace moved as a whole fits so well, as a share of the move; and so much fainter. */
  shadowMisfit: number;
  shadowContrast: number;
  /** So near, in ridge pixels, counts as on the trace. */
  onTracePx: number;
}

export const otherRodsChoice: OtherRodsChoice = {
  leastShare: 0.4,
  leaveShare: 0.15,
  leastBow: 0.02,
  leastTaper: 1.8,
  leastSeen: 0.85,
  leastEven: 0.9,
  leastAway: 0.04,
  thick: { least: 0.5, most: 1.8 },
  leastContrast: 0.4,
  shadowMisfit: 0.2,
  shadowContrast: 0.8,
  onTracePx: 4,
};

export interface OtherRod {
  /** Thick end first, in pixels of the picture. */
  thickPx: Point;
  thinPx: Point;
  /** Shares of the traced length, from the butt, between which both run together; none where they are apart. */
  shared?: { from: number; to: number };
  /** Where it leaves the trace. */
  leavesPx?: Point;
}

/** Rods beside the traced one, longest first. */
export function otherRods(
  pixels: Pixels,
  ridges: CoarseRidges,
  traced: RefinedCentreline,
  choice = otherRodsChoice,
): OtherRod[] {
  const lengthPx = traced.line.stepPx * (traced.line.x.length - 1);
  const leastLengthPx = (choice.leastShare * lengthPx) / ridges.factor;
  const own = rodLook(pixels, traced.line, ridges.factor);
  const found: OtherRod[] = [];
  for (const track of ridgeTracks(ridges, { ...trackChoice, leastLengthPx })) {
    const places = track.points.map((i) => ({
      x: (ridges.points.x[i] + 0.5) * ridges.factor - 0.5,
      y: (ridges.points.y[i] + 0.5) * ridges.factor - 0.5,
    }));
    if (bowOf(places) < choice.leastBow) continue;
    const beside = besideTrace(places, traced.line, choice.onTracePx * ridges.factor);
    if (beside.offPx < choice.leaveShare * lengthPx || beside.awayPx < choice.leastAway * lengthPx) continue;
    const look = rodLook(pixels, centrelineOf(places, 2), ridges.factor);
    if (!looksLikeRod(look, own, choice) || beside.sense * (look.thickFirst ? 1 : -1) < 0) continue;
    if (look.slope < choice.shadowContrast * own.slope && isShadow(places, traced.line, choice)) continue;
    found.push({
      thickPx: look.thickFirst ? places[0] : places[places.length - 1],
      thinPx: look.thickFirst ? places[places.length - 1] : places[0],
      ...(beside.to > beside.from ? { shared: { from: beside.from, to: beside.to } } : {}),
      ...(beside.leavesPx ? { leavesPx: beside.leavesPx } : {}),
    });
  }
  return found;
}

function looksLikeRod(look: RodLook, own: RodLook, choice: OtherRodsChoice): boolean {
  const thick = look.thickPx / own.thickPx;
  return (
    look.taper >= choice.leastTaper &&
    look.seen >= choice.leastSeen &&
    look.even >= choice.leastEven &&
    thick >= choice.thick.least &&
    thick <= choice.thick.most &&
    look.slope >= choice.leastContrast * own.slope
  );
}

function bowOf(places: readonly Point[]): number {
  const [a, b] = [places[0], places[places.length - 1]];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy) || 1;
  return Math.max(...places.map(({ x, y }) => Math.abs((x - a.x) * dy - (y - a.y) * dx) / chord)) / chord;
}

interface Beside {
  from: number;
  to: number;
  /** Longest stretch off the trace and abreast of it, and how far from it that gets. */
  offPx: number;
  awayPx: number;
  /** +1 where both run the same way together, −1 where they run against each other, 0 where they do not meet. */
  sense: number;
  leavesPx?: Point;
}

/** Where a line runs on the trace, and how far it goes elsewhere. */
function besideTrace(places: readonly Point[], line: Centreline, nearPx: number): Beside {
  const nearest = places.map((place) => nearestOf(place, line));
  const on = nearest.map(({ awayPx }) => awayPx < nearPx);
  const shares = nearest.filter((_, i) => on[i]).map(({ at }) => at / (line.x.length - 1));
  const awayPx = Math.max(...nearest.map((one) => one.awayPx));
  let offPx = 0;
  let run = 0;
  for (let i = 1; i < places.length; i++) {
    const step = Math.hypot(places[i].x - places[i - 1].x, places[i].y - places[i - 1].y);
    const abreast = nearest[i].at > 0 && nearest[i].at < line.x.length - 3;
    run = on[i] || on[i - 1] ? 0 : run + (abreast || shares.length === 0 ? step : 0);
    offPx = Math.max(offPx, run);
  }
  if (shares.length === 0) return { from: 0, to: 0, offPx, awayPx, sense: 0 };
  const turns = on.findIndex((one, i) => i > 0 && one !== on[i - 1]);
  return {
    from: Math.min(...shares),
    to: Math.max(...shares),
    offPx,
    awayPx,
    // A mere crossing has no sense.
    sense:
      Math.max(...shares) - Math.min(...shares) > 0.05 ? Math.sign(shares[shares.length - 1] - shares[0]) : 0,
    ...(turns > 0 ? { leavesPx: places[turns] } : {}),
  };
}

function nearestOf(place: Point, line: Centreline): { at: number; awayPx: number } {
  let at = 0;
  let square = Infinity;
  for (let i = 0; i < line.x.length; i += 2) {
    const away = (line.x[i] - place.x) ** 2 + (line.y[i] - place.y) ** 2;
    if (away < square) {
      square = away;
      at = i;
    }
  }
  return { at, awayPx: Math.sqrt(square) };
}

/** Whether the trace, moved as a whole, lies on the line: four rounds of nearest places and their mean move. */
function isShadow(places: readonly Point[], line: Centreline, choice: OtherRodsChoice): boolean {
  const some = places.filter((_, i) => i % 4 === 0);
  let move = { x: 0, y: 0 };
  let misfitPx = Infinity;
  for (let round = 0; round < 8; round++) {
    const offs = some.map(({ x, y }) => {
      const { at } = nearestOf({ x: x - move.x, y: y - move.y }, line);
      return { x: x - move.x - line.x[at], y: y - move.y - line.y[at] };
    });
    const mean = {
      x: offs.reduce((sum, off) => sum + off.x, 0) / offs.length,
      y: offs.reduce((sum, off) => sum + off.y, 0) / offs.length,
    };
    misfitPx = Math.sqrt(offs.reduce((sum, off) => sum + off.x ** 2 + off.y ** 2, 0) / offs.length);
    move = { x: move.x + mean.x, y: move.y + mean.y };
  }
  return misfitPx < Math.max(3, choice.shadowMisfit * Math.hypot(move.x, move.y));
}
