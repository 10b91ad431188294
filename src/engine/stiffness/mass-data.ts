/**
 * What the scale and the balance say about µ(s): integrals that are linear in µ at the coarse rows.
 * Where two sections overlap, each is given half of the mass there.
 */
import type { FitBlank, FitSection } from './request.ts';
import { placeInRows, type Rows } from './rows.ts';

export interface MassDatum {
  /** value = weights·µ, or weights·µ / under·µ for a balance point. */
  weights: Float64Array;
  under?: Float64Array;
  value: number;
  sigma: number;
  path: string;
}

export function massData(blank: FitBlank, rows: Rows): MassDatum[] {
  const data: MassDatum[] = [];
  const sections = blank.sections ?? [];
  const whole = sections.length > 0 && sections.every((section) => section.massKg !== undefined);
  if (blank.massKg !== undefined && !whole) {
    data.push({
      ...weighing(rows, blank.massKg, wholeBlank(blank), []),
      path: 'blank.massKg',
    });
  }
  sections.forEach((section, i) => {
    const others = sections.filter((_, j) => j !== i);
    if (section.massKg !== undefined) {
      data.push({
        ...weighing(rows, section.massKg, section, others),
        path: `blank.sections[${i}].massKg`,
      });
    }
    if (section.balanceFromTipM !== undefined) {
      data.push({
        weights: integralWeights(rows, section, others, (s) => s),
        under: integralWeights(rows, section, others, () => 1),
        value: section.balanceFromTipM,
        sigma: 0.003,
        path: `blank.sections[${i}].balanceFromTipM`,
      });
    }
  });
  return data;
}

function wholeBlank({ lengthM }: FitBlank): FitSection {
  return { fromTipM: 0, toTipM: lengthM };
}

/** A kitchen scale of 0.1 g. */
function weighing(rows: Rows, massKg: number, section: FitSection, others: readonly FitSection[]) {
  const weights = integralWeights(rows, section, others, () => 1);
  return { weights, value: massKg, sigma: 1e-4 + 0.005 * massKg };
}

/** ∫ f(s) share(s) µ(s) ds over the section as weights of the rows, by the midpoint rule. */
function integralWeights(
  { coarse }: Rows,
  section: FitSection,
  others: readonly FitSection[],
  f: (fromTipM: number) => number,
): Float64Array {
  const weights = new Float64Array(coarse.length);
  const steps = 400;
  const h = (section.toTipM - section.fromTipM) / steps;
  for (let k = 0; k < steps; k++) {
    const s = section.fromTipM + (k + 0.5) * h;
    const doubled = others.some((other) => s > other.fromTipM && s < other.toTipM);
    const amount = f(s) * h * (doubled ? 0.5 : 1);
    const { row, weight } = placeInRows(coarse, s);
    weights[row] += (1 - weight) * amount;
    weights[row + 1] += weight * amount;
  }
  return weights;
}

/** Writes the datum's prediction and its derivatives by ln µ. */
export function predictMass(
  { weights, under }: MassDatum,
  z: Float64Array,
  massStart: number,
  row: number,
  out: { value: Float64Array; jacobian: Float64Array; size: number },
): void {
  let over = 0;
  let below = 0;
  for (let i = 0; i < weights.length; i++) {
    const mu = Math.exp(z[massStart + i]);
    over += weights[i] * mu;
    if (under) below += under[i] * mu;
  }
  const scale = under ? 1 / below : 1;
  out.value[row] = over * scale;
  for (let i = 0; i < weights.length; i++) {
    const mu = Math.exp(z[massStart + i]);
    const lever = under ? weights[i] - out.value[row] * under[i] : weights[i];
    out.jacobian[row * out.size + massStart + i] = lever * scale * mu;
  }
}
