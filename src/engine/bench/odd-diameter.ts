/**
 * A diameter that does not lie on its blank: each is foretold from all the others and held against what was read.
 *
 *   OD(s) = a + b s + g(s) + Σ steps at joints + ε
 *
 * g a Gaussian process (a taper that bends), a and b nearly free, ε the callipers. What the others say of diameter i is
 * y_i - [K⁻¹y]_i / [K⁻¹]_ii with variance 1 / [K⁻¹]_ii (leaving one out of a Gaussian process; from memory).
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import type { AssembledBlank } from './assemble.ts';
import type { Section } from './bench.ts';
import { type DiameterRow, diameterProfile } from './diameter-profile.ts';

interface DiameterBelief {
  /** Of the bends of a taper, and the share of the length over which they hold [m]. */
  bendM: number;
  bendPerLength: number;
  /** How far the two sides of a joint may differ: alike at all joints (sleeves), and each by itself. */
  commonStepM: number;
  stepM: number;
  calliperM: number;
  /** Standard deviations, and metres, from which a diameter is odd. */
  least: number;
  leastM: number;
}
/** Judgements from published tapers and walls; checked on simulated blanks, docs/calibration.md. */
const diameterBelief: DiameterBelief = {
  bendM: 0.0004,
  bendPerLength: 0.4,
  commonStepM: 0.0005,
  stepM: 0.0002,
  calliperM: 0.00006,
  least: 3,
  leastM: 0.0005,
};

export interface OddDiameter {
  index: number;
  /** What the others foretell, and its standard deviation. */
  toldM: number;
  sigmaM: number;
}

/** The oddest of at least four diameters, tip first; `jointsM` are the joints' middles. */
export function oddDiameter(
  rows: readonly DiameterRow[],
  jointsM: readonly number[],
  lengthM: number,
  belief: DiameterBelief = diameterBelief,
): OddDiameter | undefined {
  const n = rows.length;
  if (n < 4) return undefined;
  const factor = covarianceOf(rows, jointsM, lengthM, belief);
  if (!factorCholesky(factor, n)) return undefined;
  const y = Float64Array.from(rows, ({ outsideM }) => outsideM);
  solveLower(factor, n, y, y);
  solveUpper(factor, n, y, y);
  let oddest: (OddDiameter & { by: number }) | undefined;
  for (let i = 0; i < n; i++) {
    const own = new Float64Array(n);
    own[i] = 1;
    solveLower(factor, n, own, own);
    const precision = own.reduce((sum, value) => sum + value * value, 0);
    const [offM, sigmaM] = [y[i] / precision, 1 / Math.sqrt(precision)];
    const by = Math.abs(offM) / sigmaM;
    if (by < belief.least || Math.abs(offM) < belief.leastM || (oddest && by <= oddest.by)) continue;
    oddest = { index: i, toldM: rows[i].outsideM - offM, sigmaM, by };
  }
  return oddest && { index: oddest.index, toldM: oddest.toldM, sigmaM: oddest.sigmaM };
}

/** On an assembled blank. */
export function oddOf(
  sections: readonly Section[],
  blank: AssembledBlank,
): (DiameterRow & { toldM: number }) | undefined {
  const rows = diameterProfile(sections, blank);
  const joints = blank.sections.slice(1).map(({ visible }) => visible.fromTipM);
  const odd = oddDiameter(rows, joints, blank.lengthM);
  return odd && { ...rows[odd.index], toldM: odd.toldM };
}

function covarianceOf(
  rows: readonly DiameterRow[],
  jointsM: readonly number[],
  lengthM: number,
  { bendM, bendPerLength, commonStepM, stepM, calliperM }: DiameterBelief,
): Float64Array {
  const n = rows.length;
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [a, b] = [rows[i].fromTipM, rows[j].fromTipM];
      const apart = (a - b) / (bendPerLength * lengthM);
      const [above, below] = [a, b].map((at) => jointsM.filter((joint) => joint < at).length);
      covariance[i * n + j] =
        freeM ** 2 * (1 + (a * b) / lengthM ** 2) +
        bendM ** 2 * Math.exp(-0.5 * apart * apart) +
        commonStepM ** 2 * above * below +
        stepM ** 2 * Math.min(above, below) +
        (i === j ? calliperM ** 2 : 0);
    }
  }
  return covariance;
}

/** Level and taper are as good as free. */
const freeM = 0.02;
