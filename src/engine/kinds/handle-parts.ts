/** The parts of a kind of rod's handle laid out along the blank, for a handle of these places. */
import type { HandlePartName, HandlePlaces } from './rod-kind.ts';
import { type RodKind, rodKindOf } from './rod-kinds.ts';

export interface HandlePartPlace {
  name: HandlePartName;
  fromButtM: number;
  toButtM: number;
}
/** As measured; what is left out is as long as is common. */
export interface PartLengths {
  /** Of the foregrip, or of a fly rod's grip: it ends at the grip's front. */
  gripLengthM?: number;
  seatLengthM?: number;
  rearGripLengthM?: number;
  secondGripLengthM?: number;
}

export function isSeat(name: HandlePartName): boolean {
  return /seat/.test(name);
}

/** Common practice, no source. */
const usual = { seatM: 0.1, rearGripOfTwoM: 0.1, secondGripM: 0.2 };

/**
 * From the butt end. The seat closes up to the grip ahead of it; where no length says so, it lies about the reel. The
 * rear grip closes up to the seat and reaches the butt end, or leaves bare blank down to a second grip.
 */
export function handlePartPlaces(
  rodKind: RodKind,
  handle: HandlePlaces,
  lengths: PartLengths = {},
): HandlePartPlace[] {
  const { parts } = rodKindOf(rodKind).handle;
  const { gripFrontFromButtM: frontM } = handle;
  const within = (atM: number, mostM: number) => Math.min(mostM, Math.max(0, atM));
  const [seatFromM, seatToM] = seatPlace(parts, handle, lengths);
  const two = parts.includes('second grip');
  const rearM = lengths.rearGripLengthM ?? (two ? Math.min(usual.rearGripOfTwoM, seatFromM / 2) : seatFromM);
  const rearFromM = within(seatFromM - rearM, seatFromM);
  const secondToM = within(lengths.secondGripLengthM ?? Math.min(usual.secondGripM, rearFromM), rearFromM);
  return parts.map((name) => {
    if (name === 'second grip') return { name, fromButtM: 0, toButtM: secondToM };
    if (name === 'rear grip') return { name, fromButtM: rearFromM, toButtM: seatFromM };
    if (isSeat(name)) return { name, fromButtM: seatFromM, toButtM: seatToM };
    return { name, fromButtM: seatToM, toButtM: frontM };
  });
}

function seatPlace(
  parts: readonly HandlePartName[],
  { gripFrontFromButtM: frontM, reelFromButtM }: HandlePlaces,
  { gripLengthM, seatLengthM }: PartLengths,
): [fromM: number, toM: number] {
  const within = (atM: number, mostM = frontM) => Math.min(mostM, Math.max(0, atM));
  const first = isSeat(parts[0]);
  const aboutReelM = first ? 0 : within(reelFromButtM - usual.seatM / 2);
  const toM =
    gripLengthM === undefined
      ? Math.min(frontM, Math.max(reelFromButtM, aboutReelM) + usual.seatM / 2)
      : within(frontM - gripLengthM);
  if (seatLengthM !== undefined) return [within(toM - seatLengthM, toM), toM];
  return [gripLengthM === undefined || first ? within(aboutReelM, toM) : within(toM - usual.seatM, toM), toM];
}
