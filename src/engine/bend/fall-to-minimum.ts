/** Where a rod comes to rest that has lost its equilibrium: damped Newton descent, for any rod that can take a step. */

export interface FallOptions {
  /** Newton has converged when no node turns by more than this. */
  toleranceRad: number;
  /** Largest turn of any node in one step. */
  snapRad: number;
  fallIterations: number;
}

/** A rod on its way down. */
export interface Falling {
  readonly softestNm: number;
  energy(): number;
  /** Newton's step with `damping` on every diagonal: its largest turn; undefined where that is no minimum. */
  newton(damping: number): number | undefined;
  /** Remembers the bend at hand and moves it by a share of the step. */
  move(share: number): void;
  moveBack(): void;
}

/** To a minimum of energy from a state that is not near one; the caller has pushed it off its balance. */
export function fallToMinimum(
  rod: Falling,
  { toleranceRad, snapRad, fallIterations }: FallOptions,
): { converged: boolean; iterations: number } {
  let energy = rod.energy();
  let damping = 0;
  for (let iteration = 1; iteration <= fallIterations; iteration++) {
    const largest = rod.newton(damping);
    if (largest === undefined) {
      damping = Math.max(4 * damping, 1e-4 * rod.softestNm);
      continue;
    }
    if (largest <= toleranceRad && damping === 0) return { converged: true, iterations: iteration };
    rod.move(Math.min(1, snapRad / largest));
    const lower = rod.energy();
    if (lower <= energy + 1e-12 * Math.abs(energy)) {
      energy = lower;
      damping = damping > 1e-6 * rod.softestNm ? 0.3 * damping : 0;
    } else {
      rod.moveBack();
      damping = Math.max(4 * damping, 1e-4 * rod.softestNm);
    }
  }
  return { converged: false, iterations: fallIterations };
}
