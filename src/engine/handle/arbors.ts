/**
 * Bands that centre the seat on the blank, the glue filling what lies between them and both ends.
 * Bands of 10 mm if nothing else is said, the outer ones 5 mm short of the ends: common practice, no source.
 */
import type { HandleParts } from './handle-parts.ts';

export interface Arbor {
  /** Butt-side and tip-side edge, from the butt end of the blank. */
  fromM: number;
  toM: number;
  /** Radial room the band fills at its middle; the glue gap beside it is the same. */
  gapM: number;
  /** Diameter of the blank under it. */
  outsideM: number;
}

/** Evenly spread; fewer where the seat is too short for all with glue between. `seatBoreM` must be given. */
export function placeArbors(
  {
    arborCount,
    arborWidthM: bandM,
    arborShortM,
    seatBoreM = 0,
  }: Pick<HandleParts, 'arborCount' | 'arborWidthM' | 'arborShortM' | 'seatBoreM'>,
  seat: { fromM: number; toM: number },
  outsideM: (fromButtM: number) => number,
): Arbor[] {
  const roomM = seat.toM - seat.fromM - 2 * arborShortM;
  const count = Math.max(1, Math.min(arborCount, Math.floor((roomM + leastGlueM) / (bandM + leastGlueM))));
  const pitchM = count > 1 ? (roomM - bandM) / (count - 1) : 0;
  return Array.from({ length: count }, (_, index) => {
    const fromM = seat.fromM + arborShortM + (count > 1 ? index * pitchM : Math.max(0, roomM - bandM) / 2);
    const outside = outsideM(fromM + bandM / 2);
    return { fromM, toM: fromM + bandM, gapM: (seatBoreM - outside) / 2, outsideM: outside };
  });
}
const leastGlueM = 0.005;
