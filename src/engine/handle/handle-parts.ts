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
  /** Glue between blank and grip, radial. */
  glueLineM: number;
  /** Front of the grip to the keeper's middle. */
  keeperAheadM?: number;
  /** Butt end to the stripping guide. */
  reachM?: number;
}

/** Common practice, no source: glue line 0.1 to 0.3 mm, three bands of arbor. */
export const handleDefaults = { arborCount: 3, glueLineM: 0.0002 } as const;

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
