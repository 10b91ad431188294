type Pixel = readonly [number, number];

/** Which of four taps is which corner as seen: lower left, lower right, upper right, upper left. */
export const cornerNames = ['lower left', 'lower right', 'upper right', 'upper left'] as const;

/**
 * Four taps in any order to corners: round their middle, beginning with the one lowest and leftmost on the
 * screen. Answers indices into the taps, or undefined where they are no four-sided figure (one lies within the
 * triangle of the others, or three on a line).
 */
export function cornerOrder(taps: readonly Pixel[]): number[] | undefined {
  if (taps.length !== 4) return undefined;
  const [middleX, middleY] = [0, 1].map((axis) => taps.reduce((sum, tap) => sum + tap[axis], 0) / 4);
  // On the screen y runs down: falling angles go lower left, lower right, upper right, upper left.
  const round = taps
    .map(([x, y], tap) => ({ tap, angle: Math.atan2(y - middleY, x - middleX) }))
    .sort((a, b) => b.angle - a.angle)
    .map(({ tap }) => tap);
  if (!turnsOneWay(round.map((tap) => taps[tap]))) return undefined;
  const first = round.reduce((best, tap) => (lowLeft(taps[tap]) > lowLeft(taps[best]) ? tap : best));
  const start = round.indexOf(first);
  return round.map((_, i) => round[(start + i) % 4]);
}

function lowLeft([x, y]: Pixel): number {
  return y - x;
}

function turnsOneWay(corners: readonly Pixel[]): boolean {
  return corners.every((at, i) => {
    const [next, after] = [corners[(i + 1) % 4], corners[(i + 2) % 4]];
    const turn = (next[0] - at[0]) * (after[1] - next[1]) - (next[1] - at[1]) * (after[0] - next[0]);
    const sides =
      Math.hypot(next[0] - at[0], next[1] - at[1]) * Math.hypot(after[0] - next[0], after[1] - next[1]);
    // Less than about a degree of turn is a straight line to a finger.
    return turn < -0.02 * sides;
  });
}
