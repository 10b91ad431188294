/**
 * Blank and grip bent in the rod's plane, as round pieces one after the other: what the fan passes under load. Every
 * piece is a cone frustum about its own straight axis; a place's distance from it is taken in the half plane through
 * that axis and the place, as on the straight rod (surface.ts).
 */
import type { Place } from './fan.ts';

/** From behind the reel towards the tip; two at one place are a step, as at the front of a grip. */
export interface AxisPlace {
  alongM: number;
  underM: number;
  radiusM: number;
}

interface Piece extends AxisPlace {
  directionAlong: number;
  directionUnder: number;
  runM: number;
  riseM: number;
}

/** Distance of any place from the bent body; negative inside. */
export function clearanceBeside(axis: readonly AxisPlace[]): (place: Place) => number {
  const pieces = piecesOf(axis);
  return (place) => {
    let least = Number.POSITIVE_INFINITY;
    let inside = false;
    for (const piece of pieces) {
      const along = place.alongM - piece.alongM;
      const under = place.underM - piece.underM;
      const onAxis = along * piece.directionAlong + under * piece.directionUnder;
      const offAxis = Math.hypot(under * piece.directionAlong - along * piece.directionUnder, place.asideM);
      least = Math.min(least, fromPiece(piece, onAxis, offAxis));
      inside ||= isInside(piece, onAxis, offAxis);
    }
    return inside ? -least : least;
  };
}

function piecesOf(axis: readonly AxisPlace[]): Piece[] {
  let direction = { along: 1, under: 0 };
  return axis.slice(1).map((to, i) => {
    const from = axis[i];
    const [along, under] = [to.alongM - from.alongM, to.underM - from.underM];
    const runM = Math.hypot(along, under);
    if (runM > 0) direction = { along: along / runM, under: under / runM };
    const riseM = to.radiusM - from.radiusM;
    return { ...from, directionAlong: direction.along, directionUnder: direction.under, runM, riseM };
  });
}

function fromPiece({ radiusM, runM, riseM }: Piece, onAxis: number, offAxis: number): number {
  const outward = offAxis - radiusM;
  const squared = runM * runM + riseM * riseM;
  const along = squared === 0 ? 0 : (onAxis * runM + outward * riseM) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(onAxis - share * runM, outward - share * riseM);
}

function isInside({ radiusM, runM, riseM }: Piece, onAxis: number, offAxis: number): boolean {
  return runM > 0 && onAxis >= 0 && onAxis <= runM && offAxis < radiusM + (onAxis / runM) * riseM;
}
