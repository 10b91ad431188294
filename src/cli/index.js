import { standardGravity } from '../engine/units.js';
export const g = standardGravity;
//# sourceMappingURL=index.js.map
