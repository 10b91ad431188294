/**
 * What the measured blanks of a series say of the next one.
 *
 *   z_b = m + d_b,   m ~ N(µ, S) the series' mean,  d_b ~ N(0, B) how blank b differs
 *   y_b = T_b z_b + ε,   ε ~ N(0, I)                                         (member.ts)
 *
 * S is what is believed of any blank from its diameters, B = λ₁² B_level + λ₂² B_waves (differences.ts). The
 * factors are weighed on a grid by the evidence of all readings, N(y; T µ, T (S + B) Tᵀ + I), under a wide prior
 * that shrinks them to 1 while blanks are few (empirical Bayes; Gelman et al., Bayesian Data Analysis, 3rd ed.,
 * ch. 5). Mean and covariance of m then follow in closed form, and the next blank is N(E m, Cov m + B).
 */
import { type Matrix, product } from '../numerics/matrix.ts';
import type { SeriesPrior } from '../stiffness/request.ts';
import { rowsOf } from '../stiffness/rows.ts';
import { seriesBelief } from './differences.ts';
import { type Innovation, innovationOf } from './innovation.ts';
import type { SeriesMember } from './member.ts';
import {
  differencesAt,
  type Factors,
  logEvidence,
  type Solved,
  type System,
  solve,
  systemOf,
} from './series-system.ts';

export interface LearntSeries {
  prior: SeriesPrior;
  blanks: number;
  lengthM: number;
  /** Shares of the length, tip first, at which everything below stands. */
  shareOfLength: number[];
  /** Of ln EI between blanks of the series, and of the series' mean: standard deviations. */
  spread: number[];
  meanUnsure: number[];
  /** The factors that were learnt, on level and tilt and on the waves. */
  factors: { level: number; waves: number };
  members: LearntMember[];
}

interface LearntMember {
  id: string;
  name: string;
  /** ln EI against the series' mean. */
  difference: number[];
  /** Against what the other members say; undefined for an only one. */
  againstOthers: Innovation | undefined;
}

/** Members whose lengths differ by more than this share make no series. */
export const longestDifference = 0.03;

/** All steps at one go. At least one member; all of about one length. */
export function learnSeries(members: readonly SeriesMember[]): LearntSeries {
  const steps = learnSeriesSteps(members);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** In steps, between which the caller may stop; each yields the share that is done. */
export function* learnSeriesSteps(members: readonly SeriesMember[]): Generator<number, LearntSeries> {
  const [first] = members;
  if (!first) throw new Error('a series needs a blank');
  const system = systemOf(members);
  const factors = yield* weighFactors(system);
  const learnt = solve(system, factors);
  const between = differencesAt(system, factors);
  const n = first.believed.length;
  const found: LearntMember[] = [];
  for (const [index, member] of members.entries()) {
    const own = ownCurve(system, learnt, between, index);
    found.push({
      id: member.id,
      name: member.name,
      difference: Array.from(own, (value, i) => value - learnt.mean[i]),
      againstOthers: members.length > 1 ? againstOthers(members, index, factors) : undefined,
    });
    yield 0.5 + (0.5 * (index + 1)) / members.length;
  }
  const diagonal = (matrix: Matrix) =>
    Array.from({ length: n }, (_, i) => Math.sqrt(Math.max(0, matrix.values[i * n + i])));
  return {
    prior: priorOf(learnt, between),
    blanks: members.length,
    lengthM: system.lengthM,
    shareOfLength: Array.from(rowsOf(1).fine),
    spread: diagonal(between),
    meanUnsure: diagonal(learnt.covariance),
    factors,
    members: found,
  };
}

function priorOf({ mean, covariance }: Pick<Solved, 'mean' | 'covariance'>, between: Matrix): SeriesPrior {
  return { mean: [...mean], shared: [...covariance.values], between: [...between.values] };
}

/** Root of the mean square of each factor under its evidence. */
function* weighFactors(system: System): Generator<number, Factors> {
  const { factors, factorSigma } = seriesBelief;
  const tried: { level: number; waves: number; log: number }[] = [];
  const penalty = (factor: number) => 0.5 * (Math.log(factor) / factorSigma) ** 2;
  for (const level of factors) {
    for (const waves of factors) {
      const log = logEvidence(system, { level, waves }) - penalty(level) - penalty(waves);
      tried.push({ level, waves, log });
    }
    yield (0.5 * tried.length) / factors.length ** 2;
  }
  const most = Math.max(...tried.map(({ log }) => log));
  const weight = tried.map(({ log }) => Math.exp(log - most));
  const total = weight.reduce((sum, w) => sum + w, 0);
  const root = (of: 'level' | 'waves') =>
    Math.sqrt(tried.reduce((sum, one, i) => sum + (weight[i] / total) * one[of] ** 2, 0));
  return { level: root('level'), waves: root('waves') };
}

/** The curve of one member, of its own readings and what the series lends it: E m + B Tᵀ_b (G⁻¹ r)_b. */
function ownCurve(system: System, { mean, weights }: Solved, between: Matrix, index: number): Float64Array {
  const { design } = system.members[index];
  const spreadRows = product(design, between);
  const own = mean.slice();
  for (let i = 0; i < design.rows; i++)
    for (let k = 0; k < own.length; k++)
      own[k] += weights[system.start[index] + i] * spreadRows.values[i * own.length + k];
  return own;
}

function againstOthers(members: readonly SeriesMember[], index: number, factors: Factors): Innovation {
  const system = systemOf(members.filter((_, i) => i !== index));
  const { mean, covariance } = solve(system, factors);
  const between = differencesAt(system, factors);
  return innovationOf(priorOf({ mean, covariance }, between), members[index]);
}
