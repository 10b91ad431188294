import { standardGravity } from '../engine/units/gravity.ts';
export const g = standardGravity;
