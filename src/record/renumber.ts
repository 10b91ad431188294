import type { Operation } from './operation.ts';

/** Far beyond any honest count of gestures, and far enough below what `validateOperation` takes to go on counting. */
const furthestHonestClock = 2 ** 40;

/**
 * A history whose clock ran off (a foreign file, a damaged counter) would refuse every later edit. Its clocks are
 * counted anew in the order they have: the same changes, the same winners. An honest history comes back as it is.
 */
export function renumbered<T extends Operation>(
  history: readonly T[],
): { history: readonly T[]; changed: boolean } {
  if (history.every(({ clock }) => clock <= furthestHonestClock)) return { history, changed: false };
  const clocks = [...new Set(history.map(({ clock }) => clock))].sort((a, b) => a - b);
  const places = new Map(clocks.map((clock, index) => [clock, index + 1]));
  const anew = history.map((operation) => {
    const clock = places.get(operation.clock)!;
    const index = operation.id.slice(operation.id.lastIndexOf('.') + 1);
    return { ...operation, clock, id: `${operation.device}.${clock}.${index}` };
  });
  return { history: anew, changed: true };
}
