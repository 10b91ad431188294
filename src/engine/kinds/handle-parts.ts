/** The parts of a kind of rod's handle laid out along the blank, for a handle of these places. */
import type { HandlePartName, HandlePlaces } from './rod-kind.ts';
import { type RodKind, rodKindOf } from './rod-kinds.ts';

export interface HandlePartPlace {
  name: HandlePartName;
  fromButtM: number;
  toButtM: number;
}

export function isSeat(name: HandlePartName): boolean {
  return /seat/.test(name);
}

/** Common practice, no source. */
const seatLengthM = 0.1;

/** From the butt end: the seat about the reel, the other parts fill what is left behind and ahead of it. */
export function handlePartPlaces(rodKind: RodKind, handle: HandlePlaces): HandlePartPlace[] {
  const { parts } = rodKindOf(rodKind).handle;
  const { gripFrontFromButtM: frontM, reelFromButtM } = handle;
  const seat = parts.findIndex(isSeat);
  const seatFromM = seat === 0 ? 0 : Math.min(frontM, Math.max(0, reelFromButtM - seatLengthM / 2));
  const seatToM = Math.min(frontM, Math.max(reelFromButtM, seatFromM) + seatLengthM / 2);
  const edges = [0, seatFromM, seatToM, frontM].slice(seat === 0 ? 1 : 0);
  return parts.map((name, i) => ({ name, fromButtM: edges[i], toButtM: edges[i + 1] }));
}
