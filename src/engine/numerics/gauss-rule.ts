/**
 * Three-point Gauss-Legendre rule on [0, 1], with the matrix that integrates from 0 up to each of its points
 * the quadratic through three point values. Order 6 at the ends of an interval.
 * Source: Butcher 1964, Implicit Runge-Kutta processes, Math. Comp. 18:50-64.
 *
 * Identity used by callers: weight[i]·upTo[i][j] + weight[j]·upTo[j][i] = weight[i]·weight[j], so that
 * integrating from 0 and integrating back from 1 are each other's adjoint to the last bit of the rule.
 */
interface GaussRule {
  readonly place: readonly number[];
  readonly weight: readonly number[];
  /** upTo[i][j]: share of value j in the integral from 0 to place[i]. */
  readonly upTo: readonly (readonly number[])[];
}

const root15 = Math.sqrt(15);

export const gaussRule: GaussRule = {
  place: [0.5 - root15 / 10, 0.5, 0.5 + root15 / 10],
  weight: [5 / 18, 4 / 9, 5 / 18],
  upTo: [
    [5 / 36, 2 / 9 - root15 / 15, 5 / 36 - root15 / 30],
    [5 / 36 + root15 / 24, 2 / 9, 5 / 36 - root15 / 24],
    [5 / 36 + root15 / 30, 2 / 9 + root15 / 15, 5 / 36],
  ],
};
