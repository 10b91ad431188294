import type { Otherwise } from './fit-kinds.ts';

/** What can be odd about pictures of one stand, and the quantities that say it. Pictures count from 1. */
export interface StandKinds {
  'stand/camera-moved': { picture: number; shiftM: number };
  'stand/clamp-slipped': { picture: number; turnRad: number };
  'stand/weights-swapped': { picture: number; other: number; massKg: number; otherKg: number };
  'stand/weight-off': { picture: number; massKg: number; likelyKg: number; other?: number };
  'stand/still-swings': Otherwise & { picture: number; offM: number };
  'stand/tip-smeared': { picture: number };
  'stand/other-blank': { picture: number };
  'stand/wall-unlevel': { turnRad: number; plusMinusRad: number };
}
