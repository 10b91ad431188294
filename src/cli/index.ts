import { standardGravity } from '../engine/units.ts';
export const g = standardGravity;
