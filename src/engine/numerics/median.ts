/** The upper of the two middle ones where their number is even; 0 of none. */
export function medianOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
