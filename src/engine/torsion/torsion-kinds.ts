/** What can be odd about a twist test, and the quantities that say it. */
export interface TorsionKinds {
  'torsion/no-reading': Record<string, never>;
  'torsion/turn-too-small': { turnRad: number; sigmaRad: number; armM: number; massKg: number };
  'torsion/turn-too-large': { turnRad: number; mostRad: number };
  'torsion/ratio-of-no-tube': { ratio: number; leastShare: number; mostShare: number };
  'torsion/reading-apart': { massKg: number; apartRad: number; sigmaRad: number };
}
