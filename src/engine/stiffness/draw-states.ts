/**
 * States of all unknowns drawn from a mixture. A draw from the belief beforehand, with drawn errors of the readings, is
 * led to where the readings less those errors are met: by the linear model in one step, then by the exact bend in
 * another (randomized maximum likelihood; Kitanidis 1995, Oliver et al. 1996, from memory). For linear readings
 * such draws have the posterior's spread; the second step keeps them on the readings where bends are not linear.
 * How wide belief and errors are is itself only judged: each blank has a scale of its own on all of them, which makes
 * the spread Student's (numerics/student.ts). Scales fill their range evenly, so that a few blanks have few and many.
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import { evenShare, studentScale } from '../numerics/student.ts';
import { benchModel, emptyPrediction, predictBench } from './bench-model.ts';
import { asSeen, type BlankKind, type Mixture, type RoughKind, rowsTimes } from './mixture.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { valuesOf } from './unknowns.ts';

/** What may be drawn from. */
export interface Drawing {
  mixture: Mixture;
  problem: FitProblem;
  best: Pick<MostProbable, 'u' | 'z' | 'prediction'>;
}

/** How far a drawn blank is scattered, by its number. */
export type ScaleOf = (index: number) => number;
const ownScale: ScaleOf = (index) => studentScale(evenShare(index));
/** For a root mean square over a few blanks: it is the same, and a few far ones would tell it badly. */
export const sameScale: ScaleOf = () => 1;

/** The same seed gives the same states; fewer are the first of them. */
export function drawStates(
  asked: Drawing,
  count: number,
  seed: number,
  scaleOf: ScaleOf = ownScale,
): Float64Array[] {
  // a model of its own: bends start from the last one, and the answer must not hang on what was asked before
  const { request, rows } = asked.problem.model;
  const drawing = { ...asked, problem: { ...asked.problem, model: benchModel(request, rows) } };
  const random = seededRandom(seed);
  const normal = seededNormal(random);
  const { kinds, rough, shapes } = drawing.mixture;
  const factors = rough.map(() => undefined as Float64Array | undefined);
  return Array.from({ length: count }, (_, index) => {
    const scale = scaleOf(index);
    const kind = kindAt(kinds, random());
    factors[kind.rough] ??= factorOf(rough[kind.rough]);
    const draw: Draw = {
      kind: rough[kind.rough],
      factor: factors[kind.rough]!,
      change: kind.shape === undefined ? undefined : shapes[kind.shape].change,
    };
    return drawn(drawing, draw, () => scale * normal());
  });
}

/** The kind at a share of all weights, laid one after the other. */
function kindAt(kinds: readonly BlankKind[], share: number): BlankKind {
  let upTo = 0;
  for (const kind of kinds) {
    upTo += kind.weight;
    if (share < upTo) return kind;
  }
  return kinds[0];
}

interface Draw {
  kind: RoughKind;
  /** Cholesky factor of its K_r. */
  factor: Float64Array;
  change?: Float64Array;
}

function factorOf({ covariance }: RoughKind): Float64Array {
  const factor = covariance.slice();
  if (!factorCholesky(factor, Math.sqrt(covariance.length)))
    throw new Error('a prior covariance is not positive definite');
  return factor;
}

function drawn(drawing: Drawing, { kind, factor, change }: Draw, scatter: () => number): Float64Array {
  const { mixture, problem } = drawing;
  const { readings, mean } = mixture;
  const { stiffness, size } = problem.unknowns;
  const waves = Float64Array.from(mean, scatter);
  // without the local shape, which the readings see by `asSeen`
  const z = mean.map((value, i) => {
    let sum = value;
    for (let k = 0; k <= i; k++) sum += factor[i * mean.length + k] * waves[k];
    return sum;
  });
  const v = Float64Array.from({ length: size }, scatter);
  v.fill(0, stiffness.start, stiffness.start + stiffness.size);
  const shapeSeen = rowsTimes(readings.design, change ? asSeen(change) : new Float64Array(mean.length));
  const linear = () => {
    const byStiffness = rowsTimes(readings.design, z);
    return byStiffness.map((value, d) => value + shapeSeen[d] + rowDot(readings.others[d], v));
  };
  const misread = linear().map((value, d) => readings.observed[d] - value - scatter());
  moveBy(mixture, kind, misread, z, v);
  const wanted = linear();
  const seen = seenExactly(drawing, stateOf(drawing, z, v, change));
  if (seen)
    moveBy(
      mixture,
      kind,
      wanted.map((value, d) => value - seen[d]),
      z,
      v,
    );
  return stateOf(drawing, z, v, change);
}

/** Changes z and v as readings that lie so far off tell of them. Overwrites `off`. */
function moveBy(
  { readings }: Mixture,
  { evidence, gain }: RoughKind,
  off: Float64Array,
  z: Float64Array,
  v: Float64Array,
): void {
  solveLower(evidence, readings.count, off, off);
  solveUpper(evidence, readings.count, off, off);
  rowsTimes(gain, off).forEach((by, i) => {
    z[i] += by;
  });
  readings.others.forEach((row, d) => {
    for (let k = 0; k < row.length; k++) v[k] += row[k] * off[d];
  });
}

function stateOf(
  { problem: { unknowns } }: Drawing,
  z: Float64Array,
  v: Float64Array,
  change?: Float64Array,
): Float64Array {
  const state = new Float64Array(unknowns.size);
  valuesOf(unknowns, v, state);
  for (let i = 0; i < z.length; i++) state[unknowns.stiffness.start + i] = z[i] + (change ? change[i] : 0);
  return state;
}

/** The exact prediction on the scale of the linear model; undefined where some test finds no bend. */
function seenExactly(
  { mixture: { readings }, problem, best }: Drawing,
  state: Float64Array,
): Float64Array | undefined {
  const { model, unknowns, extras } = problem;
  const out = emptyPrediction(model, unknowns);
  if (!predictBench(model, unknowns, state, out)) return undefined;
  extras.forEach((pattern, k) => {
    for (const { datum, amount } of pattern) out.value[datum] += amount * state[unknowns.extra.start + k];
  });
  const { start, size } = unknowns.stiffness;
  const atBest = rowsTimes(readings.design, best.z.subarray(start, start + size));
  return atBest.map((value, i) => {
    const d = readings.data[i];
    const moved = readings.scale[i] * (out.value[d] - best.prediction.value[d]);
    return value + rowDot(readings.others[i], best.u) + moved;
  });
}

function rowDot(row: Float64Array, x: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < row.length; k++) sum += row[k] * x[k];
  return sum;
}
