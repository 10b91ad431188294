/**
 * A builder at a simulated bench who takes reading after reading, either what is proposed or what comes to hand, and
 * how sure his marks are after each. The yardstick belongs to the bench and not to the way it is read: what the
 * readings tell of ln EI, to first order at the true blank and under the same belief beforehand, times the slopes of
 * the best marks on the true blank by ln EI in ten cells along it. What the readings happen to show does not move it.
 */
import { type BlankTables, freeRod } from '../../src/engine/bench/free-rod.ts';
import { frequency } from '../../src/engine/frequency/frequency.ts';
import type { LadderRequest } from '../../src/engine/layout/ladder-request.ts';
import { type LayoutFound, layout } from '../../src/engine/layout/layout.ts';
import { defaultLadder, defaultLimits } from '../../src/engine/layout/layout-defaults.ts';
import type { LayoutRequest } from '../../src/engine/layout/layout-request.ts';
import { solveLower } from '../../src/engine/numerics/cholesky.ts';
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { benchModel, emptyPrediction, predictBench } from '../../src/engine/stiffness/bench-model.ts';
import { fitStiffness } from '../../src/engine/stiffness/fit.ts';
import { factorNormalMatrix } from '../../src/engine/stiffness/most-probable.ts';
import type { Posterior } from '../../src/engine/stiffness/posterior.ts';
import { prepared } from '../../src/engine/stiffness/prepared.ts';
import { commonRoughness } from '../../src/engine/stiffness/prior.ts';
import { priorsOf, unknownsFor } from '../../src/engine/stiffness/refit.ts';
import type { FitClampSetup, FitRequest, FitSpanSetup, FitTest } from '../../src/engine/stiffness/request.ts';
import { rowsOf } from '../../src/engine/stiffness/rows.ts';
import { stopwatchSigmaS } from '../../src/engine/stiffness/swing-data.ts';
import { rowByStandard } from '../../src/engine/stiffness/unknowns.ts';
import { placeAnew } from '../../src/engine/sureness/mark-spread.ts';
import {
  type NextReadingOptions,
  nextReading,
  nextReadingDefaults,
} from '../../src/engine/sureness/next-reading.ts';
import type { OptionsQuestion, ReadingOption } from '../../src/engine/sureness/reading-option.ts';
import { readingsOnOffer } from '../../src/engine/sureness/reading-options.ts';
import { spanSigmaM } from '../../src/engine/sureness/span-offers.ts';
import { dropOn, randomBlank, readBench, type TrueBlank, trueCurve } from './simulated-bench.ts';

export interface Step {
  readings: number;
  minutes: number;
  /** Σ var(mark) / slack² by the bench's own yardstick. */
  price: number;
}
export type Policy = 'proposed' | 'at random';

const sigmaM = 0.0015;
const gripM = 0.3;

/** Starts with the ten-minute readings; ends once `enough` says so. `chance` seeds the choice at random. */
export function readByPolicy(
  seed: number,
  policy: Policy,
  enough: (step: Step) => boolean,
  { chance = 1, guides = 6, options = nextReadingDefaults as NextReadingOptions } = {},
): Step[] {
  const bench = openBench(seed, guides);
  const random = seededRandom(1000 * seed + chance);
  const steps: Step[] = [];
  for (;;) {
    const fit: FitRequest = {
      blank: bench.fitBlank,
      setups: structuredClone([...bench.spans, ...bench.setups]),
    };
    const { answer, posterior } = fitStiffness(fit);
    if (answer.status === 'refused' || !posterior) throw new Error(JSON.stringify(answer.findings));
    const step = { readings: bench.readings, minutes: bench.minutes, price: bench.priceOf(fit) };
    steps.push(step);
    if (enough(step)) return steps;
    const question: OptionsQuestion = {
      fit,
      standing: bench.spans.length + bench.setups.length - 1,
      tables: answer,
    };
    take(
      bench,
      policy === 'at random' ? anyOf(question, random) : proposed(bench, question, posterior, options),
    );
  }
}

function anyOf(question: OptionsQuestion, random: () => number): ReadingOption {
  const all = readingsOnOffer(question).flatMap((offer): { option: ReadingOption }[] => offer.options);
  return all[Math.floor(random() * all.length)].option;
}

function proposed(
  { request }: OpenBench,
  question: OptionsQuestion,
  posterior: Posterior,
  options: NextReadingOptions,
): ReadingOption {
  const asked = { ...request, rod: freeRod(question.tables, request.rod.lengthM) };
  const best = layout(asked) as LayoutFound;
  const { fromTipM: proposedFromTipM, slackM } = best;
  return nextReading({ ...question, posterior, request: asked, proposedFromTipM, slackM }, undefined, options)
    .options[0];
}

/** A bench that is read on. */
export interface ReadOn {
  blank: TrueBlank;
  fitBlank: FitRequest['blank'];
  setups: (FitClampSetup & { tests: FitTest[] })[];
  spans: FitSpanSetup[];
  tiltRad: number[];
  normal: () => number;
  readings: number;
  minutes: number;
}
/** Nothing read yet. */
export function freshBench(blank: TrueBlank, fitBlank: FitRequest['blank'], seed: number): ReadOn {
  return {
    blank,
    fitBlank,
    setups: [],
    spans: [],
    tiltRad: [],
    normal: seededNormal(seededRandom(seed + 900)),
    readings: 0,
    minutes: 0,
  };
}
export interface OpenBench extends ReadOn {
  request: LayoutRequest & LadderRequest;
  priceOf(fit: FitRequest): number;
}

export function openBench(seed: number, guides: number): OpenBench {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const { lengthM } = blank;
  const truth = trueTables(blank);
  const request = layoutOn(truth, lengthM, guides);
  const nothing = [{ clampFromTipM: lengthM - 0.15, stationsM: [0], hungKg: [0], sigmaM }];
  const bench: OpenBench = {
    ...freshBench(blank, readBench(blank, nothing, seed, 0).request.blank, seed),
    request,
    priceOf: yardstick(blank, truth, request),
  };
  const clampFromTipM = lengthM - 0.1524;
  const flags = [0, 1 / 9, 1 / 4, 1 / 2].map((share) => Math.round(share * lengthM * 1000) / 1000);
  const thirdKg = request.ladder[0].tensionN / 0.3 / 9.80665;
  const loads = [
    { massKg: 0, readFromTipM: [0] },
    { massKg: thirdKg, readFromTipM: flags },
  ];
  take(bench, { clampFromTipM, turnedRad: 0, loads, readings: 5, minutes: 10 });
  return bench;
}

export function take(bench: ReadOn, option: ReadingOption): void {
  const { standing, clampFromTipM, turnedRad, loads, readings, minutes } = option;
  if (option.supportsFromTipM) {
    readSags(bench, option);
    return;
  }
  if (option.swings) {
    count(bench, option, option.swings.count);
    return;
  }
  const { blank, setups, tiltRad, normal } = bench;
  if (standing === undefined) {
    setups.push({ nominalAngleRad: 0, tiltSigmaRad: Math.PI / 180, clampFromTipM, turnedRad, tests: [] });
    tiltRad.push((Math.PI / 180) * normal());
  }
  const buttAngleRad = tiltRad[setups.length - 1];
  for (const { massKg, readFromTipM } of loads) {
    const hung = massKg > 0 ? [{ fromTipM: 0, massKg }] : [];
    const curve = trueCurve(blank, { buttAngleRad, clampFromTipM, turnedRad, hung });
    const drops = readFromTipM.map((fromTipM) => ({
      fromTipM,
      dropM: dropOn(curve, fromTipM, 0) + sigmaM * normal(),
    }));
    (setups[setups.length - 1].tests as FitTest[]).push({ hung, readings: drops, sigmaM });
  }
  bench.readings += readings;
  bench.minutes += minutes;
}

/** The true blank's frequency by subspace iteration, timed with a stopwatch. */
function count(bench: ReadOn, { clampFromTipM, minutes }: ReadingOption, swings: number): void {
  const rod = freeRod(trueTables(bench.blank), clampFromTipM);
  const swung = frequency({ rod, modes: 1 });
  if (swung.status !== 'converged') throw new Error('the simulated blank does not swing');
  const seconds = swings / swung.hz[0] + stopwatchSigmaS * bench.normal();
  const hz = swings / seconds;
  const counted = { clampFromTipM, hz, sigmaHz: (hz * stopwatchSigmaS) / seconds };
  bench.fitBlank = { ...bench.fitBlank, swings: [...(bench.fitBlank.swings ?? []), counted] };
  bench.readings += 1;
  bench.minutes += minutes;
}

/** Sags by statics and two integrals on the straight beam, which shares nothing with the fit's own. */
function readSags(bench: ReadOn, { supportsFromTipM = [0, 0], loads, minutes }: ReadingOption): void {
  const { blank, normal } = bench;
  const [loadFromTipM] = loads[0].readFromTipM;
  const tests = loads.map(({ massKg }) => ({
    massKg,
    sagM: straightSag(blank, { supportsFromTipM, loadFromTipM, massKg }) + spanSigmaM * normal(),
    sigmaM: spanSigmaM,
  }));
  bench.spans.push({ kind: 'span', supportsFromTipM, loadFromTipM, tests });
  bench.readings += tests.length;
  bench.minutes += minutes;
}

export function straightSag(
  { lengthM, stiffnessNm2, kgPerM }: Pick<TrueBlank, 'lengthM' | 'stiffnessNm2' | 'kgPerM'>,
  {
    supportsFromTipM: [a, b],
    loadFromTipM: load,
    massKg,
  }: { supportsFromTipM: readonly [number, number]; loadFromTipM: number; massKg: number },
): number {
  const steps = 4000;
  const h = lengthM / steps;
  const at = (i: number) => (i + 0.5) * h;
  let [weight, lever] = [massKg, massKg * (load - a)];
  for (let i = 0; i < steps; i++) {
    weight += kgPerM(at(i)) * h;
    lever += kgPerM(at(i)) * h * (at(i) - a);
  }
  const atB = lever / (b - a);
  const pushes = [
    { place: a, kg: weight - atB },
    { place: load, kg: -massKg },
    { place: b, kg: atB },
  ];
  const heights = [0, 0, 0];
  let [shear, moment, slope, y] = [0, 0, 0, 0];
  for (let i = 0; i < steps; i++) {
    pushes.forEach(({ place, kg }, k) => {
      if (Math.floor(place / h) !== i) return;
      heights[k] = y + slope * (place - i * h);
      shear += kg;
    });
    shear -= kgPerM(at(i)) * h;
    moment += shear * h;
    slope += (9.80665 * moment * h) / stiffnessNm2(at(i));
    y += slope * h;
  }
  return heights[0] + ((heights[2] - heights[0]) * (load - a)) / (b - a) - heights[1];
}

function trueTables(blank: TrueBlank, factorAt: (fromTipM: number) => number = () => 1): BlankTables {
  const at = Array.from({ length: 161 }, (_, i) => (i / 160) * blank.lengthM);
  return {
    stiffness: at.map((s) => ({ fromTipM: s, EINm2: factorAt(s) * blank.stiffnessNm2(s) })),
    massPerLength: at.map((s) => ({ fromTipM: s, kgPerM: blank.kgPerM(s) })),
  };
}

function layoutOn(truth: BlankTables, lengthM: number, count: number): LayoutRequest & LadderRequest {
  const rod = freeRod(truth, lengthM - gripM);
  const ladder = defaultLadder(rod);
  if (!ladder) throw new Error('the simulated blank has no ladder');
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    reel: { alongM: -0.2, offsetM: 0.05 },
    guides: {
      count,
      ringHeightsM: Array.from({ length: count }, (_, i) => 0.004 + (0.008 * i) / count),
      side: 'under',
    },
    tipTop: { ringHeightM: 0.004 },
    ladder,
    limits: defaultLimits(rod.lengthM),
    firstFromTipM: 0.06 * lengthM,
    strippingFromTipM: 0.72 * lengthM,
  };
}

/** Cells of equal length in front of the grip; ln EI of each raised and lowered by a tenth. */
function markSlopes(
  truth: BlankTables,
  request: LayoutRequest & LadderRequest,
  cellOf: (at: number) => number,
): { slopes: number[][]; slackM: number[] } {
  const best = layout(request) as LayoutFound;
  const slopes = Array.from({ length: cells }, (_, cell) => {
    const [low, high] = [-0.1, 0.1].map((by) => {
      const stiffness = truth.stiffness.map((row) => ({
        ...row,
        EINm2: row.EINm2 * (cellOf(row.fromTipM) === cell ? Math.exp(by) : 1),
      }));
      const rod = freeRod({ ...truth, stiffness }, request.rod.lengthM);
      const start = { fromTipM: best.fromTipM };
      return placeAnew({ ...request, rod, start }, 'near')?.fromTipM ?? best.fromTipM;
    });
    return high.map((at, guide) => (at - low[guide]) / 0.2);
  });
  const slackM = best.slackM.map(({ towardsTip, towardsButt }) =>
    Math.max(0.003, 0.5 * (towardsTip + towardsButt)),
  );
  return { slopes, slackM };
}
const cells = 10;

function yardstick(
  blank: TrueBlank,
  truth: BlankTables,
  request: LayoutRequest & LadderRequest,
): (fit: FitRequest) => number {
  const cellOf = (fromTipM: number) =>
    Math.min(cells - 1, Math.floor((cells * fromTipM) / request.rod.lengthM));
  const { slopes, slackM } = markSlopes(truth, request, cellOf);
  return (fit) => {
    const { unknowns, rows, factor } = knownAtTruth(blank, fit);
    const n = unknowns.size;
    return slackM.reduce((sum, slack, guide) => {
      const row = new Float64Array(n);
      rows.fine.forEach((at, i) => {
        const cell = cellOf(at);
        const within = rows.fine.filter((other) => cellOf(other) === cell).length;
        row[unknowns.stiffness.start + i] = slopes[cell][guide] / within;
      });
      rowByStandard(unknowns, row);
      solveLower(factor, n, row, row);
      return sum + row.reduce((square, value) => square + value * value, 0) / slack ** 2;
    }, 0);
  };
}

/** The posterior of readings like these about the true blank, roughness as common. */
function knownAtTruth(blank: TrueBlank, fit: FitRequest): Omit<Posterior, 'drawing'> {
  const rows = rowsOf(fit.blank.lengthM);
  const ready = prepared(fit);
  const priors = priorsOf(ready, rows);
  const unknowns = unknownsFor(priors, ready, [], commonRoughness);
  const z = unknowns.mean.slice();
  rows.fine.forEach((at, i) => {
    z[unknowns.stiffness.start + i] = Math.log(blank.stiffnessNm2(at));
  });
  rows.coarse.forEach((at, i) => {
    z[unknowns.mass.start + i] = Math.log(blank.kgPerM(at));
  });
  const model = benchModel(ready, rows);
  const out = emptyPrediction(model, unknowns);
  predictBench(model, unknowns, z, out);
  const n = unknowns.size;
  model.data.forEach(({ sigma }, d) => {
    const row = out.jacobian.subarray(d * n, (d + 1) * n);
    rowByStandard(unknowns, row);
    for (let k = 0; k < n; k++) row[k] /= sigma;
  });
  const factor = factorNormalMatrix(out.jacobian, n, 0);
  return { lengthM: fit.blank.lengthM, rows, unknowns, u: new Float64Array(n), factor };
}
