export const standardGravity = 9.80665;
