/** The weight is given as it is written; a blank held further from its tip takes less to drop by a third. */
export function thirdLoadInWords(load: string, held: 'at the grip' | 'at the butt'): string {
  return `Held ${held}, ${load} at the tip drops it by a third of the free length`;
}

/** What a tip load for a third of the length leaves open; stands beside every figure made from it. */
export const loadAmbiguityWords: readonly string[] = [
  'Datum: the drop counts from where the tip hangs by the blank’s own weight, not from the level of the butt. Counted from there, the load is smaller.',
  'Length: a third of the length in front of the clamp or grip, not of the whole rod.',
  'Angle: none is used here. Tables that add one count it from the horizontal or from the unloaded tip.',
];
