import { expect, test } from 'vitest';
import { fitOfSeries } from '../../../test/support/fit-of-series.ts';
import { readBench, type SetupPlan, type TrueBlank } from '../../../test/support/simulated-bench.ts';
import { randomSeries } from '../../../test/support/simulated-series.ts';
import { type ProtocolKind, planProtocol } from '../bench/protocol.ts';
import { predictedTipDrop } from '../bend/predicted-tip-drop.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import type { FitAnswer, FitRequest, FitSolved } from '../stiffness/request.ts';
import { type LearntSeries, learnSeries } from './learn-series.ts';
import { readingsOf, seriesMember } from './member.ts';
import { enoughBlanks, fullReadings, measuredInFull } from './spared-readings.ts';

/** More series under SERIES=60 (npm test -- --long); the same first ones stand always. */
const series = Math.max(3, Number(process.env.SERIES ?? 3));

function read(blank: TrueBlank, kind: ProtocolKind, seed: number): FitRequest {
  return readBench(blank, planOf(blank, kind), seed, 0).request;
}

/** The protocol as it would be laid out for this blank, every reading good to 2 mm. */
function planOf(blank: TrueBlank, kind: ProtocolKind): SetupPlan[] {
  const places = Array.from({ length: 41 }, (_, i) => (i / 40) * blank.lengthM);
  const tables = {
    stiffness: places.map((fromTipM) => ({ fromTipM, EINm2: blank.stiffnessNm2(fromTipM) })),
    massPerLength: places.map((fromTipM) => ({ fromTipM, kgPerM: blank.kgPerM(fromTipM) })),
  };
  const tipDropM = (loaded: { clampFromTipM: number; massKg: number }) => predictedTipDrop(tables, loaded);
  return planProtocol({ kind, blankLengthM: blank.lengthM, tipDropM }).setups.map((setup) => ({
    clampFromTipM: setup.clampFromTipM,
    stationsM: setup.flagsFromTipM,
    hungKg: [...new Set(setup.loads.map(({ massKg }) => massKg))],
    sigmaM: 0.002,
  }));
}

function learnt(blanks: readonly TrueBlank[], seed: number): LearntSeries {
  const members = blanks.map((blank, i) => seriesMember(`b${i}`, '', read(blank, 'twenty-minute', seed + i)));
  return learnSeries(members.flatMap((member) => member ?? []));
}

/** Mean width of the 95 % band of ln EI, how much of it holds the truth, and the error of its middle. */
function sureness(answer: FitAnswer, blank: TrueBlank) {
  const rows = (answer as FitSolved).stiffness.filter(({ fromTipM }) => fromTipM < 0.95 * blank.lengthM);
  const mean = (of: (row: (typeof rows)[number], truth: number) => number) =>
    rows.reduce((sum, row) => sum + of(row, blank.stiffnessNm2(row.fromTipM)), 0) / rows.length;
  return {
    width: mean(({ lowNm2, highNm2 }) => Math.log(highNm2 / lowNm2)),
    held: mean(({ lowNm2, highNm2 }, truth) => (truth >= lowNm2 && truth <= highNm2 ? 1 : 0)),
    error: Math.sqrt(mean(({ EINm2 }, truth) => Math.log(EINm2 / truth) ** 2)),
  };
}

test(
  `half the protocol with three blanks of its series is as sure as all of it without (${series} invented series)`,
  () => {
    const rows = Array.from({ length: series }, (_, k) => {
      const blanks = randomSeries(100 + k, enoughBlanks + 1);
      const next = blanks[enoughBlanks];
      const short = read(next, 'with-series', 8000 + k);
      const lent = fitOfSeries(short, learnt(blanks.slice(0, enoughBlanks), 9000 + 10 * k));
      return {
        full: sureness(fitStiffness(read(next, 'twenty-minute', 7000 + k)).answer, next),
        alone: sureness(fitStiffness(short).answer, next),
        lent: sureness(lent.answer, next),
      };
    });
    const mean = (which: 'full' | 'alone' | 'lent', of: 'width' | 'held' | 'error') =>
      rows.reduce((sum, row) => sum + row[which][of], 0) / rows.length;
    for (const which of ['full', 'alone', 'lent'] as const)
      console.info(which, ...(['width', 'held', 'error'] as const).map((of) => mean(which, of).toFixed(3)));
    expect(mean('lent', 'width')).toBeLessThan(1.02 * mean('full', 'width'));
    expect(mean('lent', 'error')).toBeLessThan(1.1 * mean('full', 'error'));
    expect(mean('lent', 'held')).toBeGreaterThan(0.85);
    expect(mean('alone', 'width')).toBeGreaterThan(mean('lent', 'width'));
  },
  20_000 + 10_000 * series,
);

test('an odd blank shows in the short protocol: stiffer as a whole, or soft in its tip third', () => {
  const blanks = randomSeries(11, enoughBlanks + 1);
  const known = learnt(blanks.slice(0, enoughBlanks), 300);
  const next = blanks[enoughBlanks];
  const like = fitOfSeries(read(next, 'with-series', 77), known);
  expect(like.series.used).toBe(true);
  const stiffer: TrueBlank = { ...next, stiffnessNm2: (s) => 1.6 * next.stiffnessNm2(s) };
  const softTip: TrueBlank = {
    ...next,
    stiffnessNm2: (s) => next.stiffnessNm2(s) * (s < next.lengthM / 3 ? 0.55 : 1),
  };
  for (const odd of [stiffer, softTip]) {
    const { series: use } = fitOfSeries(read(odd, 'with-series', 77), known);
    expect(use.innovation?.verdict).toBe('unlike');
    expect(use.used).toBe(false);
  }
});

test('only blanks of its length count, and only those measured in full', () => {
  const [blank] = randomSeries(11, 1);
  const full = read(blank, 'twenty-minute', 1);
  const half = read(blank, 'with-series', 1);
  const longer = { ...full, blank: { ...full.blank, lengthM: 1.05 * full.blank.lengthM } };
  expect(measuredInFull([full, half, longer, full], blank.lengthM)).toBe(2);
  expect(full.setups.reduce((sum, setup) => sum + readingsOf(setup), 0)).toBe(fullReadings + 1);
});
