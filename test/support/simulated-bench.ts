/**
 * Invented blanks, and benches read off them, from a formulation that shares nothing with the fit.
 *
 * Truth by shooting: EI (θ' - κ0) = M, M' = -V(s) cos θ with the clamp far end, V the dead weight carried
 * across s; classical Runge-Kutta from the tip (M = 0, θ guessed) to the clamp, the guess corrected until the
 * blank leaves the clamp at the right angle, the load followed up from nothing.
 */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitClampSetup, FitRequest } from '../../src/engine/stiffness/request.ts';

export interface TrueBlank {
  lengthM: number;
  stiffnessNm2: (fromTipM: number) => number;
  kgPerM: (fromTipM: number) => number;
  /** In the plane of turnedRad 0, and across it. */
  restPerM: (fromTipM: number) => number;
  restAcrossPerM: (fromTipM: number) => number;
  outsideM: (fromTipM: number) => number;
  /** Where it is doubled. */
  ferrules: { fromTipM: number; toTipM: number }[];
}

export interface BlankOptions {
  sweepSigmaPerM: number;
  /** Number of ferrules, or left to chance (0 to 3). */
  ferrules?: number;
}

export interface Curve {
  fromTipM: Float64Array;
  xM: Float64Array;
  yM: Float64Array;
}

const gravity = 9.80665;

/** A random blank: taper, long waves, soft zones, ferrules, sweep. */
export function randomBlank(seed: number, { sweepSigmaPerM, ferrules }: BlankOptions): TrueBlank {
  const random = seededRandom(seed);
  const normal = seededNormal(random);
  const between = (low: number, high: number) => low + (high - low) * random();
  const logBetween = (low: number, high: number) => Math.exp(between(Math.log(low), Math.log(high)));
  const lengthM = between(1.7, 3.3);
  const butt = logBetween(8, 35);
  const tip = logBetween(0.02, 0.2);
  const power = between(3.1, 3.9);
  const tipOd = between(0.0014, 0.002);
  const buttOd = tipOd * Math.exp(Math.log(butt / tip) / power);
  const bow = between(0.9, 1.1);
  const outsideM = (s: number) => tipOd + (buttOd - tipOd) * Math.max(0, s / lengthM) ** bow;

  const waves = Array.from({ length: 1 + Math.floor(3 * random()) }, () => ({
    amplitude: between(0.05, 0.28),
    perLength: between(0.8, 3),
    phase: between(0, 2 * Math.PI),
  }));
  const soft = Array.from({ length: Math.floor(2 * random()) }, () => ({
    at: between(0.15, 0.9) * lengthM,
    sigma: between(0.05, 0.15),
    amount: Math.log(between(0.65, 0.9)),
  }));
  const joints = ferrules ?? Math.floor(4 * random());
  const bumps = Array.from({ length: joints }, (_, k) => ({
    at: ((k + 1) / (joints + 1)) * lengthM + between(-0.03, 0.03),
    sigma: between(0.06, 0.12) / 2.355,
    amount: Math.log(between(1.3, 2)),
  }));
  const stiffnessNm2 = (s: number) => {
    let log = Math.log(butt) + power * Math.log(outsideM(s) / buttOd);
    for (const w of waves) log += w.amplitude * Math.sin((2 * Math.PI * w.perLength * s) / lengthM + w.phase);
    for (const b of [...soft, ...bumps]) log += b.amount * Math.exp(-0.5 * ((s - b.at) / b.sigma) ** 2);
    return Math.exp(log);
  };
  const massPower = between(1.1, 1.6);
  const buttKgPerM = between(0.016, 0.024);
  const kgPerM = (s: number) => buttKgPerM * (outsideM(s) / buttOd) ** massPower;
  const sweep = () => {
    const parts = [0, 1, 2].map((k) => ({
      a: (normal() * sweepSigmaPerM) / Math.sqrt(1.5),
      perLength: 0.5 * k + 0.4 * random(),
      phase: between(0, 2 * Math.PI),
    }));
    return (s: number) =>
      parts.reduce((sum, p) => sum + p.a * Math.sin((2 * Math.PI * p.perLength * s) / lengthM + p.phase), 0);
  };
  // as wide as a bump is at half its height
  const doubled = bumps.map(({ at, sigma }) => ({
    fromTipM: at - (2.355 / 2) * sigma,
    toTipM: at + (2.355 / 2) * sigma,
  }));
  return {
    lengthM,
    stiffnessNm2,
    kgPerM,
    outsideM,
    restPerM: sweep(),
    restAcrossPerM: sweep(),
    ferrules: doubled,
  };
}

export interface TrueLoad {
  buttAngleRad: number;
  clampFromTipM: number;
  turnedRad: number;
  hung: readonly { fromTipM: number; massKg: number }[];
}

/** The blank's curve under a load, clamp first. */
export function trueCurve(blank: TrueBlank, load: TrueLoad): Curve {
  const table = tabulate(blank, load);
  let tipAngle = load.buttAngleRad;
  let factor = 0;
  let step = 0.25;
  let speed = 0;
  while (factor < 1) {
    const next = Math.min(1, factor + step);
    const found = shoot(table, load.buttAngleRad, next, tipAngle + speed * (next - factor));
    if (found !== undefined && Math.abs(found - tipAngle) < 0.6) {
      speed = (found - tipAngle) / (next - factor);
      tipAngle = found;
      factor = next;
      step *= 1.5;
    } else {
      step *= 0.5;
      if (step < 1e-5) throw new Error('the simulated blank found no bend');
    }
  }
  return curveOf(table, tipAngle, 1);
}

interface Table {
  steps: number;
  h: number;
  /** At half steps from the tip: compliance, rest curvature, weight carried from the tip side. */
  compliance: Float64Array;
  rest: Float64Array;
  weight: Float64Array;
}

function tabulate(blank: TrueBlank, { clampFromTipM, turnedRad, hung }: TrueLoad): Table {
  const steps = 600;
  const h = clampFromTipM / steps;
  const at = (k: number) => 0.5 * k * h;
  const n = 2 * steps + 1;
  const weight = new Float64Array(n);
  for (let k = 1; k < n; k++) weight[k] = weight[k - 1] + gravity * 0.5 * h * blank.kgPerM(at(k - 0.5));
  for (const { fromTipM, massKg } of hung) {
    for (let k = 0; k < n; k++) if (at(k) >= fromTipM - 1e-9) weight[k] += gravity * massKg;
  }
  return {
    steps,
    h,
    compliance: Float64Array.from({ length: n }, (_, k) => 1 / blank.stiffnessNm2(at(k))),
    rest: Float64Array.from(
      { length: n },
      (_, k) =>
        Math.cos(turnedRad) * blank.restPerM(at(k)) + Math.sin(turnedRad) * blank.restAcrossPerM(at(k)),
    ),
    weight,
  };
}

/** One step from the tip towards the clamp; angle falls by κ ds, moment grows by V cos θ ds (hanging down). */
function integrate(
  table: Table,
  tipAngle: number,
  factor: number,
  each?: (theta: number, k: number) => void,
) {
  const { steps, h, compliance, rest, weight } = table;
  let theta = tipAngle;
  let moment = 0;
  each?.(theta, 0);
  const dTheta = (m: number, k: number) => m * compliance[k] - rest[k];
  const dMoment = (t: number, k: number) => factor * weight[k] * Math.cos(t);
  for (let i = 0; i < steps; i++) {
    const k = 2 * i;
    const a1 = dTheta(moment, k);
    const b1 = dMoment(theta, k);
    const a2 = dTheta(moment + 0.5 * h * b1, k + 1);
    const b2 = dMoment(theta + 0.5 * h * a1, k + 1);
    const a3 = dTheta(moment + 0.5 * h * b2, k + 1);
    const b3 = dMoment(theta + 0.5 * h * a2, k + 1);
    const a4 = dTheta(moment + h * b3, k + 2);
    const b4 = dMoment(theta + h * a3, k + 2);
    theta += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    moment += (h / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
    each?.(theta, i + 1);
  }
  return theta;
}

/** The tip angle that meets the clamp's angle, by secants from a guess. */
function shoot(table: Table, buttAngleRad: number, factor: number, guess: number): number | undefined {
  let a = guess;
  let fa = integrate(table, a, factor) - buttAngleRad;
  let b = guess - 0.5 * fa;
  if (b === a) b = a + 1e-6;
  for (let i = 0; i < 40; i++) {
    const fb = integrate(table, b, factor) - buttAngleRad;
    if (Math.abs(fb) < 1e-10) return b;
    const next = b - (fb * (b - a)) / (fb - fa);
    if (!Number.isFinite(next) || Math.abs(next - b) > 2) return undefined;
    a = b;
    fa = fb;
    b = next;
  }
  return undefined;
}

function curveOf(table: Table, tipAngle: number, factor: number): Curve {
  const { steps, h } = table;
  const theta = new Float64Array(steps + 1);
  integrate(table, tipAngle, factor, (value, k) => {
    theta[k] = value;
  });
  const fromTipM = new Float64Array(steps + 1);
  const xM = new Float64Array(steps + 1);
  const yM = new Float64Array(steps + 1);
  for (let i = 1; i <= steps; i++) {
    // from the clamp outwards; angle nearly linear within a step
    const k = steps - i;
    const middle = 0.5 * (theta[k] + theta[k + 1]);
    const chord = h * (1 - (theta[k] - theta[k + 1]) ** 2 / 24);
    xM[i] = xM[i - 1] + chord * Math.cos(middle);
    yM[i] = yM[i - 1] + chord * Math.sin(middle);
  }
  for (let i = 0; i <= steps; i++) fromTipM[i] = h * (steps - i);
  return { fromTipM, xM, yM };
}

/** Place of a station on a curve, linear between its points. */
export function placeOn({ fromTipM, xM, yM }: Curve, at: number): { xM: number; yM: number } {
  const h = fromTipM[0] / (fromTipM.length - 1);
  const p = Math.min(fromTipM.length - 1 - 1e-9, Math.max(0, (fromTipM[0] - at) / h));
  const i = Math.floor(p);
  const t = p - i;
  return { xM: xM[i] + t * (xM[i + 1] - xM[i]), yM: yM[i] + t * (yM[i + 1] - yM[i]) };
}

export interface SetupPlan {
  clampFromTipM?: number;
  nominalAngleRad?: number;
  turnedRad?: number;
  stationsM: readonly number[];
  hungKg: readonly number[];
  sigmaM: number;
  /** Under the first and the last weight read right at the clamp too, and every flag measured again from there. */
  checked?: boolean;
}

export interface SimulatedBench {
  blank: TrueBlank;
  request: FitRequest;
  tiltRad: number[];
}

/** Reads a blank by a plan; tilts of 1°, readings to 0.1 mm with the stated scatter. */
export function readBench(
  blank: TrueBlank,
  plan: readonly SetupPlan[],
  seed: number,
  sweepSigmaPerM: number,
): SimulatedBench {
  const normal = seededNormal(seededRandom(seed));
  const { lengthM } = blank;
  const round = (value: number, to: number) => Math.round(value / to) * to;
  const diameters = Array.from({ length: 9 }, (_, i) => {
    const fromTipM = (i / 8) * lengthM;
    return { fromTipM, outsideM: blank.outsideM(fromTipM) + 3e-5 * normal() };
  });
  let massKg = 0;
  for (let k = 0; k < 400; k++) massKg += (blank.kgPerM(((k + 0.5) / 400) * lengthM) * lengthM) / 400;
  const tiltRad: number[] = [];
  const setups = plan.map((setup): FitClampSetup => {
    const clampFromTipM = setup.clampFromTipM ?? lengthM;
    const nominalAngleRad = setup.nominalAngleRad ?? 0;
    const tilt = (Math.PI / 180) * normal();
    tiltRad.push(tilt);
    const tests = setup.hungKg.map((kg, t) => {
      const isEnd = t === 0 || t === setup.hungKg.length - 1;
      const hung = kg > 0 ? [{ fromTipM: 0, massKg: kg }] : [];
      const curve = trueCurve(blank, {
        buttAngleRad: nominalAngleRad + tilt,
        clampFromTipM,
        turnedRad: setup.turnedRad ?? 0,
        hung,
      });
      const readings = [...setup.stationsM, ...(setup.checked && isEnd ? [clampFromTipM] : [])]
        .filter((s) => s < clampFromTipM - 0.05 || s === clampFromTipM)
        .map((fromTipM) => ({
          fromTipM,
          dropM: round(dropOn(curve, fromTipM, nominalAngleRad) + setup.sigmaM * normal(), 1e-4),
        }));
      return { hung, readings, sigmaM: setup.sigmaM };
    });
    return {
      nominalAngleRad,
      tiltSigmaRad: Math.PI / 180,
      turnedRad: setup.turnedRad ?? 0,
      ...(setup.clampFromTipM === undefined ? {} : { clampFromTipM }),
      tests,
      ...(setup.checked ? { flagChecks: checksOf(setup.stationsM, clampFromTipM, normal) } : {}),
    };
  });
  const request = {
    blank: {
      lengthM,
      diameters,
      massKg: round(massKg, 1e-5),
      sweepSigmaPerM,
      // a builder sees where the blank is doubled, not how stiff it is there
      stiffZones: blank.ferrules,
    },
    setups,
  };
  return { blank, request, tiltRad };
}

/** Each flag's distance from the clamp, by a tape that errs by 2 mm. */
function checksOf(stationsM: readonly number[], clampFromTipM: number, normal: () => number) {
  return stationsM
    .filter((fromTipM) => fromTipM > 0 && fromTipM < clampFromTipM - 0.05)
    .map((fromTipM) => ({ fromTipM, fromClampM: clampFromTipM - fromTipM + 0.002 * normal() }));
}

export function dropOn(curve: Curve, fromTipM: number, nominalAngleRad: number): number {
  const { xM, yM } = placeOn(curve, fromTipM);
  return xM * Math.sin(nominalAngleRad) - yM * Math.cos(nominalAngleRad);
}

/** One set-up, eight flags, four loads. */
export function fullPlan(sigmaM: number): SetupPlan[] {
  const stationsM = [0, 5, 12, 22, 34, 48, 64, 80].map((inches) => inches * 0.0254);
  return [{ stationsM, hungKg: [0, 0.03, 0.08, 0.16], sigmaM }];
}

/** Few readings, the clamp moved up the blank: 21 in all. */
export function shortPlan(lengthM: number): SetupPlan[] {
  return [
    { stationsM: [0, 12, 27, 54].map((inches) => inches * 0.0254), hungKg: [0, 0.05, 0.1], sigmaM: 0.0015 },
    { clampFromTipM: lengthM / 2, stationsM: [0], hungKg: [0, 0.03, 0.06], sigmaM: 0.0015 },
    { clampFromTipM: lengthM / 4, stationsM: [0], hungKg: [0, 0.02, 0.04], sigmaM: 0.001 },
    { clampFromTipM: 0.305, stationsM: [0], hungKg: [0, 0.005, 0.01], sigmaM: 0.0007 },
  ];
}

/** A bowed blank read as it lies and turned half over. */
export function turnedPlan(sigmaM: number): SetupPlan[] {
  const stationsM = [0, 0.3, 0.7, 1.2, 1.7];
  return [0, Math.PI].map((turnedRad) => ({ turnedRad, stationsM, hungKg: [0, 0.05, 0.1], sigmaM }));
}
