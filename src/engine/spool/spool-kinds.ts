/** What can be wrong with a question about a spool, and the quantities that say it. */
export interface SpoolKinds {
  'spool/too-few-rings': { count: number };
  'spool/ring-behind-grip': { fromTipM: number; lengthM: number };
  'spool/rings-at-one-place': { fromTipM: number; other: number };
  'spool/in-front-of-ring': { alongM: number; ringAlongM: number };
  'spool/reel-past-guide': { reelFromButtM: number; guideFromButtM: number };
  'spool/axis-away': { tiltRad: number };
  'spool/ring-smaller-than-knot': { insideM: number; knotM: number };
  'spool/no-surface': Record<string, never>;
  'spool/surface-out-of-order': { fromTipM: number; beforeM: number };
}
