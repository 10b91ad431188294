/** Where a piece of work is done on the rod, as its drawing needs it; lengths from the ends that are named. */
export type BenchPiece =
  /** A mark, a guide's place or a wrap, on one section. */
  | { kind: 'place'; section: number; fromOwnTipM: number; toOwnTipM: number }
  /** Into the grip, from its butt face. */
  | { kind: 'bore'; depthM: number; deepestM: number }
  /** Tape built up, from the butt end of the blank. */
  | { kind: 'arbor'; fromM: number; toM: number; reachM: number };
