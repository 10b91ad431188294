/** The handle as the builder planned it; lengths in metres from the butt end of the blank, left out where not said. */
export interface HandleParts {
  gripFrontM: number;
  gripLengthM?: number;
  gripBoreM?: number;
  seatLengthM?: number;
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
  /** Front of the grip to the keeper's middle. */
  keeperAheadM?: number;
  /** Butt end to the stripping guide. */
  reachM?: number;
}

/** Common practice, no source: glue line 0.1 to 0.3 mm, three bands of arbor, the reamer's end 5 to 10 mm off. */
export const handleDefaults = {
  arborCount: 3,
  arborWidthM: 0.01,
  glueLineM: 0.0002,
  reamShortM: 0.008,
} as const;

/** Where grip and seat lie along the blank, from the butt end; `undefined` while their lengths are not known. */
export interface HandleRoom {
  grip?: { fromM: number; toM: number };
  seat?: { fromM: number; toM: number };
}

/** The grip ends at its front; the seat closes up to the grip's back. */
export function handleRoom(parts: HandleParts): HandleRoom {
  if (parts.gripLengthM === undefined) return {};
  const grip = { fromM: parts.gripFrontM - parts.gripLengthM, toM: parts.gripFrontM };
  if (parts.seatLengthM === undefined) return { grip };
  return { grip, seat: { fromM: grip.fromM - parts.seatLengthM, toM: grip.fromM } };
}
