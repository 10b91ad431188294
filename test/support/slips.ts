/**
 * What goes wrong at a bench, done to simulated readings: an inch misread, two loads swapped, stations an inch off, a
 * clamp that slips by 1° between tests, the wrong edge read. And whether it matters: how far the marks placed on the
 * blank that is fitted without any doubt lie from those of the clean readings, against their slack.
 */

import { freeRod } from '../../src/engine/bench/free-rod.ts';
import type { LadderRequest } from '../../src/engine/layout/ladder-request.ts';
import { layout } from '../../src/engine/layout/layout.ts';
import { defaultLadder, defaultLimits } from '../../src/engine/layout/layout-defaults.ts';
import type { LayoutRequest } from '../../src/engine/layout/layout-request.ts';
import { seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { rodOf } from '../../src/engine/stiffness/posterior.ts';
import { prepared } from '../../src/engine/stiffness/prepared.ts';
import { priorsOf, refit } from '../../src/engine/stiffness/refit.ts';
import type { FitClampSetup, FitRequest } from '../../src/engine/stiffness/request.ts';
import { rowsOf } from '../../src/engine/stiffness/rows.ts';
import { placeAnew } from '../../src/engine/sureness/mark-spread.ts';
import { inWords } from './in-words.ts';
import { dropOn, type SimulatedBench, trueCurve } from './simulated-bench.ts';

export const slipKinds = ['inch', 'swap', 'flag', 'stations', 'slip', 'edge'] as const;
export type SlipKind = (typeof slipKinds)[number];

export interface Spoilt {
  request: FitRequest;
  /** Any of these paths names it. */
  paths: string[];
}

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
type Setup = Writable<FitClampSetup>;

const inchM = 0.0254;

/** In the first set-up; which test, reading and sign is left to chance. */
export function spoil(bench: SimulatedBench, kind: SlipKind, seed: number): Spoilt {
  const random = seededRandom(seed);
  const upTo = (count: number) => Math.floor(random() * count);
  const request = structuredClone(bench.request) as Writable<FitRequest>;
  const setup = request.setups[0] as Setup;
  const sign = upTo(2) === 0 ? 1 : -1;
  const named = spoilers[kind](setup, bench, upTo, sign);
  return { request: request as FitRequest, paths: named.map((path) => `setups[0]${path}`) };
}

type Spoiler = (
  setup: Setup,
  bench: SimulatedBench,
  upTo: (count: number) => number,
  sign: number,
) => string[];

const spoilers: Record<SlipKind, Spoiler> = {
  inch({ tests }, _, upTo, sign) {
    const t = upTo(tests.length);
    const r = upTo(tests[t].readings.length);
    tests[t].readings[r].dropM += sign * inchM;
    return [`.tests[${t}].readings[${r}]`];
  },
  swap({ tests }, _, upTo) {
    const a = upTo(tests.length - 1);
    const b = a + 1 + upTo(tests.length - 1 - a);
    [tests[a].hung, tests[b].hung] = [tests[b].hung, tests[a].hung];
    return [`.tests[${a}]`, `.tests[${b}]`];
  },
  flag(setup, bench, upTo, sign) {
    const flags = setup.tests[0].readings.filter(({ fromTipM }) => fromTipM < clampOf(setup, bench)).length;
    const r = 1 + upTo(flags - 1);
    for (let t = 0; t < setup.tests.length; t++) readAt(setup, bench, t, r, sign * inchM);
    const check = setup.flagChecks?.find(({ fromTipM }) => fromTipM === setup.tests[0].readings[r].fromTipM);
    if (check) check.fromClampM -= sign * inchM;
    return setup.tests.map((_, t) => `.tests[${t}].readings[${r}]`);
  },
  stations(setup, bench, upTo, sign) {
    const t = upTo(setup.tests.length);
    for (let r = 0; r < setup.tests[t].readings.length; r++) readAt(setup, bench, t, r, sign * inchM);
    return [`.tests[${t}]`];
  },
  slip(setup, bench, upTo, sign) {
    const first = 1 + upTo(setup.tests.length - 1);
    setup.tests.slice(first).forEach(({ hung = [], readings }) => {
      const [before, after] = [0, (sign * Math.PI) / 180].map((by) => curveOf(setup, bench, hung, by));
      for (const reading of readings) {
        reading.dropM += dropOn(after, reading.fromTipM, 0) - dropOn(before, reading.fromTipM, 0);
      }
    });
    return [`.tests[${first}]`];
  },
  edge(setup, { blank }, _, sign) {
    for (const { readings } of setup.tests) {
      for (const reading of readings) reading.dropM += sign * 0.5 * blank.outsideM(reading.fromTipM);
    }
    return ['', ...setup.tests.map((_, t) => `.tests[${t}]`)];
  },
};

function clampOf({ clampFromTipM }: Setup, { blank }: SimulatedBench): number {
  return clampFromTipM ?? blank.lengthM;
}

/** The reading is taken `byM` nearer the butt than its station says. The tip is no flag. */
function readAt(setup: Setup, bench: SimulatedBench, t: number, r: number, byM: number): void {
  const { hung = [], readings } = setup.tests[t];
  const curve = curveOf(setup, bench, hung, 0);
  const { fromTipM } = readings[r];
  if (fromTipM === clampOf(setup, bench)) return;
  const there = Math.max(0, fromTipM + byM);
  readings[r].dropM += dropOn(curve, there, 0) - dropOn(curve, fromTipM, 0);
}

function curveOf(
  { clampFromTipM, turnedRad = 0 }: Setup,
  { blank, tiltRad }: SimulatedBench,
  hung: readonly { fromTipM: number; massKg: number }[],
  slippedRad: number,
) {
  const buttAngleRad = tiltRad[0] + slippedRad;
  return trueCurve(blank, { buttAngleRad, clampFromTipM: clampFromTipM ?? blank.lengthM, turnedRad, hung });
}

/** Whether some mark would move by more than its slack if the readings were believed as they are. */
export function moves({ request }: SimulatedBench, spoilt: Spoilt): boolean {
  const asked = layoutOn(request);
  const best = layout(asked);
  if (best.status === 'refused') throw new Error(inWords(best.findings[0]));
  const rod = freeRod(believed(spoilt.request), asked.rod.lengthM);
  const placed = placeAnew({ ...asked, rod, start: { fromTipM: best.fromTipM } });
  if (!placed) return true;
  return placed.fromTipM.some((at, mark) => {
    const { towardsTip, towardsButt } = best.slackM[mark];
    const by = at - best.fromTipM[mark];
    return by > Math.max(3e-3, towardsButt) || -by > Math.max(3e-3, towardsTip);
  });
}

/** The most probable blank with nothing doubted. */
function believed(request: FitRequest) {
  const rows = rowsOf(request.blank.lengthM);
  const ready = prepared(request);
  const { problem, best } = refit({ request: ready, named: [] }, priorsOf(ready, rows), 1);
  const {
    stiffness,
    massPerLength = [],
    restCurvature,
  } = rodOf({ lengthM: request.blank.lengthM, rows, unknowns: problem.unknowns }, best.z);
  return { stiffness, massPerLength, restCurvature };
}

/** Six guides, the common ladder and limits, on the blank of these readings. */
export function layoutOn(request: FitRequest): LayoutRequest & LadderRequest {
  const { lengthM } = request.blank;
  const rod = freeRod(believed(request), lengthM - 0.3);
  const ladder = defaultLadder(rod);
  if (!ladder) throw new Error('the simulated blank has no ladder');
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    reel: { alongM: -0.2, offsetM: 0.05 },
    guides: { count: 6, ringHeightsM: [0.004, 0.005, 0.006, 0.007, 0.009, 0.012], side: 'under' },
    tipTop: { ringHeightM: 0.004 },
    ladder,
    limits: defaultLimits(rod.lengthM),
    firstFromTipM: 0.06 * lengthM,
    strippingFromTipM: 0.72 * lengthM,
  };
}
