/**
 * What no taper shows and a blank may have all the same: a soft stretch somewhere, or a tip that is faster than its
 * diameters. Each shape is what it takes from ln EI along the fine rows.
 */
interface LocalBelief {
  /** Share of blanks with one soft stretch; what it takes from ln EI at its middle; half its width [m]. */
  softShare: number;
  softAmounts: readonly number[];
  softHalvesM: readonly number[];
  /** Share with a fast tip; what it takes at the very tip; how far it reaches, as a share of the length. */
  fastShare: number;
  fastAmounts: readonly number[];
  fastReaches: readonly number[];
}
/** A judgement: no published distribution of such places was found. */
const localBelief: LocalBelief = {
  softShare: 0.4,
  softAmounts: [0.25, 0.5, 0.85],
  softHalvesM: [0.05, 0.1, 0.18],
  fastShare: 0.1,
  fastAmounts: [0.4, 0.8],
  fastReaches: [0.15, 0.25, 0.35],
};

export interface LocalShape {
  share: number;
  /** Of ln EI, at the fine rows; not above 0. */
  change: Float64Array;
}

export function localShapes(
  fine: Float64Array,
  lengthM: number,
  belief: LocalBelief = localBelief,
): LocalShape[] {
  return [
    ...sharing(belief.softShare, softStretches(fine, lengthM, belief)),
    ...sharing(belief.fastShare, fastTips(fine, lengthM, belief)),
  ];
}

function sharing(share: number, changes: readonly Float64Array[]): LocalShape[] {
  return changes.map((change) => ({ share: share / changes.length, change }));
}

function softStretches(
  fine: Float64Array,
  lengthM: number,
  { softAmounts, softHalvesM }: LocalBelief,
): Float64Array[] {
  return softHalvesM.flatMap((halfM) =>
    placesFor(halfM, lengthM).flatMap((at) =>
      softAmounts.map((amount) =>
        fine.map((s) => {
          const off = Math.abs(s - at) / halfM;
          return off < 1 ? -amount * Math.cos(0.5 * Math.PI * off) ** 2 : 0;
        }),
      ),
    ),
  );
}

/** About half a stretch apart. */
function placesFor(halfM: number, lengthM: number): number[] {
  const count = Math.max(8, Math.min(24, Math.round((0.9 * lengthM) / halfM)));
  return Array.from({ length: count }, (_, i) => (0.04 + (0.88 * i) / (count - 1)) * lengthM);
}

function fastTips(
  fine: Float64Array,
  lengthM: number,
  { fastAmounts, fastReaches }: LocalBelief,
): Float64Array[] {
  return fastReaches.flatMap((reach) =>
    fastAmounts.map((amount) => fine.map((s) => -amount * Math.max(0, 1 - s / (reach * lengthM)) ** 1.5)),
  );
}
