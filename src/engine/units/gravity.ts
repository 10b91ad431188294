/** Standard gravity [m/s²], exact by definition (3rd CGPM, 1901). Weight [N] = mass [kg] × this. */
export const standardGravity = 9.80665;
