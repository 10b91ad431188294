/** Where the rings of a spiral stand: on top at the reel, under from where the spiral ends. */

export interface Spiral {
  /** Guides that turn the line from top to under; 0 goes over at once. */
  transitions: number;
  /** How many guides from the stripping guide stay on top before it begins: 1 the stripping guide alone. */
  onTop?: number;
  /** The side the line goes round by, seen from behind the butt. */
  by?: 'right' | 'left';
}

/** Angle of each guide round the rod, from the tip down, `count` without the tip-top (which stands under, at 0). */
export function spiralAngles(count: number, { transitions, onTop = 1, by = 'right' }: Spiral): number[] {
  const sign = by === 'right' ? 1 : -1;
  return Array.from({ length: count }, (_, i) => {
    const fromReel = count - onTop - 1 - i;
    if (fromReel < 0) return Math.PI;
    return fromReel >= transitions ? 0 : (sign * Math.PI * (transitions - fromReel)) / (transitions + 1);
  });
}
