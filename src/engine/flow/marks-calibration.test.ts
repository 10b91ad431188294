/**
 * Whether the ± of the marks is true: simulated benches of five kinds, the guides placed on the blank of their readings
 * and on the true one. Six benches standing, a fifth of BENCHES in a long run. The few draws behind a ± and marks that
 * move together make six benches a coarse check, so that it allows more.
 */
import { expect, test } from 'vitest';
import {
  fullPlan,
  randomBlank,
  readBench,
  type SetupPlan,
  shortPlan,
  type TrueBlank,
  turnedPlan,
} from '../../../test/support/simulated-bench.ts';
import { layoutOn } from '../../../test/support/slips.ts';
import { freeRod } from '../bench/free-rod.ts';
import { layout } from '../layout/layout.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import { placeAnew } from '../sureness/mark-spread.ts';
import { markSureness } from './build-sureness.ts';

const kinds: { bowed?: true; plan(lengthM: number): SetupPlan[] }[] = [
  { plan: () => fullPlan(0.001) },
  { plan: () => fullPlan(0.002) },
  { plan: () => fullPlan(0.003) },
  { plan: shortPlan },
  { bowed: true, plan: () => turnedPlan(0.0015) },
];
const benches = Math.floor(Number(process.env.BENCHES ?? 30) / 5);
const standing = benches < 20;

function trueTables(blank: TrueBlank) {
  const at = Array.from({ length: 161 }, (_, i) => (blank.lengthM * i) / 160);
  return {
    stiffness: at.map((s) => ({ fromTipM: s, EINm2: blank.stiffnessNm2(s) })),
    massPerLength: at.map((s) => ({ fromTipM: s, kgPerM: blank.kgPerM(s) })),
    restCurvature: at.map((s) => ({ fromTipM: s, perM: blank.restPerM(s) })),
  };
}

/** How far each moving mark lies from its best place on the true blank, in its own standard deviations. */
function marksOff(seed: number): number[] {
  const { bowed, plan } = kinds[seed % kinds.length];
  const sweepSigmaPerM = bowed ? 0.02 : 0;
  const blank = randomBlank(seed, { sweepSigmaPerM });
  const { request: fit } = readBench(blank, plan(blank.lengthM), seed + 1000, sweepSigmaPerM);
  const { posterior } = fitStiffness(fit);
  const request = layoutOn(fit);
  const best = layout(request);
  if (best.status === 'refused' || !posterior) throw new Error(`bench ${seed} has no layout`);
  const { fromTipM: proposedFromTipM } = best;
  const rod = freeRod(trueTables(blank), request.rod.lengthM);
  const truth = placeAnew({ ...request, rod, start: { fromTipM: proposedFromTipM } });
  if (!truth) throw new Error(`the true blank of bench ${seed} finds no bend`);
  const { plusMinusM } = markSureness({ request, proposedFromTipM }, posterior);
  const off = truth.fromTipM.map((at, mark) => (at - proposedFromTipM[mark]) / (plusMinusM[mark] / 1.96));
  return off.slice(1, -1);
}

test(`on ${benches} simulated benches the best places lie within their stated ±`, {
  timeout: 600_000,
}, () => {
  const off = Array.from({ length: benches }, (_, i) => marksOff(4001 + i)).flat();
  const share = (reach: number) => off.filter((by) => Math.abs(by) <= reach).length / off.length;
  expect(share(0.6745)).toBeGreaterThanOrEqual(standing ? 0.3 : 0.45);
  expect(share(0.6745)).toBeLessThanOrEqual(standing ? 0.85 : 0.7);
  expect(share(1.96)).toBeGreaterThanOrEqual(standing ? 0.8 : 0.9);
  if (!standing) expect(share(1.96)).toBeLessThanOrEqual(0.99);
});
