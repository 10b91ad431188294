/** The handle as the builder planned it; lengths in metres from the butt end of the blank, left out where not said. */
export interface HandleParts {
  gripFrontM: number;
  gripLengthM?: number;
  gripBoreM?: number;
  seatLengthM?: number;
  /** Behind the seat; of rods that have one. */
  rearGripLengthM?: number;
  rearGripBoreM?: number;
  /** At the butt end of rods with two grips. */
  secondGripLengthM?: number;
  /** Outside, at its front. */
  gripDiameterM: number;
  seatBoreM?: number;
  /** How far the fighting butt stands out behind the blank's end. */
  fightingButtM?: number;
  arborCount: number;
  /** Width of one band of arbor. */
  arborWidthM: number;
  /** Glue between blank and grip, radial. */
  glueLineM: number;
  /** Where the reamer stops, short of the far end; the rest is eased by hand. */
  reamShortM: number;
  /** From the seat's ends to its outer arbors. */
  arborShortM: number;
  /** Radial gap over which tape alone no longer centres and holds. */
  tapedGapM: number;
  /** Wanted in the winding check over the blank, and in the tip-top's tube. */
  checkRoomM: Room;
  tubeRoomM: Room;
  /** Front of the grip to the keeper's middle. */
  keeperAheadM?: number;
  /** Butt end to the stripping guide. */
  reachM?: number;
}

/** Bore less the diameter that goes into it. */
export interface Room {
  least: number;
  most: number;
}

/**
 * Common practice, no source: glue line 0.1 to 0.3 mm, two to four bands of arbor 3 to 6 mm off the ends, the reamer's
 * end 5 to 10 mm off, tape up to a gap of 1.5 mm, checks 0.1 to 0.3 mm wider than the blank, tubes 0.03 to 0.10 mm.
 */
export const handleDefaults: Omit<HandleParts, 'gripFrontM'> = {
  arborCount: 3,
  arborWidthM: 0.01,
  glueLineM: 0.0002,
  reamShortM: 0.008,
  arborShortM: 0.005,
  tapedGapM: 0.0015,
  checkRoomM: { least: 0.0001, most: 0.0003 },
  tubeRoomM: { least: 0.00003, most: 0.0001 },
  gripDiameterM: 0.025,
};

/** Where grip and seat lie along the blank, from the butt end; `undefined` while their lengths are not known. */
export interface HandleRoom {
  grip?: { fromM: number; toM: number };
  seat?: { fromM: number; toM: number };
  rearGrip?: { fromM: number; toM: number };
}

/** The grip ends at its front; the seat closes up to the grip's back, a rear grip to the seat's. */
export function handleRoom(parts: HandleParts): HandleRoom {
  if (parts.gripLengthM === undefined) return {};
  const grip = { fromM: parts.gripFrontM - parts.gripLengthM, toM: parts.gripFrontM };
  if (parts.seatLengthM === undefined) return { grip };
  const seat = { fromM: grip.fromM - parts.seatLengthM, toM: grip.fromM };
  if (parts.rearGripLengthM === undefined) return { grip, seat };
  return { grip, seat, rearGrip: { fromM: seat.fromM - parts.rearGripLengthM, toM: seat.fromM } };
}
