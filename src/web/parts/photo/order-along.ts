interface Tapped {
  px: readonly [number, number];
}

/** Points between butt and tip in the order that makes the way through them shortest; as given without ends. */
export function orderAlong<T extends Tapped>(
  between: readonly T[],
  butt: Tapped | undefined,
  tip: Tapped | undefined,
): T[] {
  if (!butt || !tip) return [...between];
  const way: Tapped[] = [butt, tip];
  // Each is put where it lengthens the way least; then neighbours are swapped while that shortens it.
  for (const point of between) {
    const growth = way
      .slice(1)
      .map((next, i) => apart(way[i], point) + apart(point, next) - apart(way[i], next));
    way.splice(growth.indexOf(Math.min(...growth)) + 1, 0, point);
  }
  for (let swapped = true; swapped; ) {
    swapped = false;
    for (let i = 1; i + 2 < way.length; i++) {
      const before = apart(way[i - 1], way[i]) + apart(way[i + 1], way[i + 2]);
      const after = apart(way[i - 1], way[i + 1]) + apart(way[i], way[i + 2]);
      if (after < before - 1e-9) {
        [way[i], way[i + 1]] = [way[i + 1], way[i]];
        swapped = true;
      }
    }
  }
  return way.slice(1, -1) as T[];
}

function apart(a: Tapped, b: Tapped): number {
  return Math.hypot(a.px[0] - b.px[0], a.px[1] - b.px[1]);
}
