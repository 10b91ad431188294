import { expect, test } from 'vitest';
import {
  flyGuides,
  inchM,
  irregularRod,
  nineFootFive,
  sevenSixFour,
  smoothRod,
} from '../../../test/rods/invented-rods.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { makeLadder, readLadder } from './ladder.ts';
import { makeLadderState } from './ladder-state.ts';
import { type LayoutFound, layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';
import { unevennessOf } from './unevenness.ts';

function request(seed: number, change: Partial<LayoutRequest> = {}): LayoutRequest {
  return {
    rod: irregularRod(seed % 2 ? nineFootFive : sevenSixFour, seed),
    buttAngleRad: Math.PI / 4,
    ...flyGuides(9),
    firstFromTipM: 4 * inchM,
    strippingFromTipM: (seed % 2 ? 77 : 61) * inchM,
    ...change,
  };
}
function found(of: LayoutRequest): LayoutFound {
  const answer = layout(of);
  if (answer.status === 'refused') throw new Error(inWords(answer.findings[0]));
  return answer;
}
const intervalsOf = (fromTipM: readonly number[]) =>
  fromTipM.slice(1).map((station, i) => station - fromTipM[i]);
/** Reads layouts under what an answer used. */
function readerOf(of: LayoutRequest, { ladder, limits }: Pick<LayoutFound, 'ladder' | 'limits'>) {
  const prepared = makeLadder({ ...of, ladder, limits });
  const keep = makeLadderState();
  return (fromTipM: readonly number[]) => readLadder(prepared, fromTipM, keep).worst;
}

test.each([1, 2, 3, 4])(
  'held marks stay, intervals grow and keep 50 mm, feet keep apart (seed %i)',
  (seed) => {
    const footM = [0.02, 0.02, 0.02, 0.02, 0.02, 0.02, 0.2, 0.2, 0.2];
    const pinned = [{ index: 3, fromTipM: 0.5 }];
    const { fromTipM } = found(request(seed, { footM, pinned }));
    const of = request(seed);
    expect(fromTipM[0]).toBe(of.firstFromTipM);
    expect(fromTipM[8]).toBe(of.strippingFromTipM);
    expect(fromTipM[3]).toBe(0.5);
    const intervals = intervalsOf(fromTipM);
    expect(Math.min(...intervals)).toBeGreaterThanOrEqual(0.05 - 1e-9);
    expect(Math.min(...intervals.slice(6))).toBeGreaterThanOrEqual(0.2 - 1e-9);
    expect(Math.min(...intervalsOf(intervals))).toBeGreaterThan(-1e-9);
  },
);

test.each([1, 2, 3])('no guide stands in a kept-free zone, feet counted (seed %i)', (seed) => {
  const of = request(seed);
  const foot = 0.03;
  const keepOut = [0.25, 0.5, 0.7].map((share) => ({
    fromTipM: share * of.rod.lengthM - 0.03,
    toTipM: share * of.rod.lengthM + 0.03,
  }));
  const answer = found({ ...of, keepOut, footM: new Array(9).fill(foot) });
  for (const station of answer.fromTipM) {
    for (const zone of keepOut) {
      const outside = Math.max(zone.fromTipM - foot / 2 - station, station - zone.toTipM - foot / 2);
      expect(outside).toBeGreaterThan(-2e-7);
    }
  }
  expect(answer.leastWorst).toBeGreaterThanOrEqual(found(of).leastWorst * (1 - 2e-3));
});

test.each([1, 2, 3])(
  'the layout is within 2 % of the least worst, and free is no worse than growing (seed %i)',
  (seed) => {
    const growing = found(request(seed));
    const free = found(request(seed, { intervals: 'free' }));
    for (const answer of [growing, free]) {
      expect(answer.score.worst).toBeLessThan(1.02 * answer.leastWorst);
      expect(answer.score.worst).toBeLessThanOrEqual(answer.startScore.worst);
    }
    expect(free.leastWorst).toBeLessThanOrEqual(growing.leastWorst * (1 + 1e-3));
  },
);

test.each([1, 2])('no small change of the marks is smoother and still within the band (seed %i)', (seed) => {
  const of = request(seed, { intervals: 'free' });
  const answer = found(of);
  const worstOf = readerOf(of, answer);
  const random = seededRandom(seed);
  let smoother = 0;
  for (let trial = 0; trial < 1500; trial++) {
    const size = 0.02 * random() ** 2;
    const moved = answer.fromTipM.map((s, i) => (i > 0 && i < 8 ? s + size * (2 * random() - 1) : s));
    if (unevennessOf(moved) > 0.98 * answer.unevenness) continue;
    smoother++;
    expect(worstOf(moved)).toBeGreaterThan(1.0175 * answer.leastWorst);
  }
  expect(smoother).toBeGreaterThan(20);
});

test('a mark moved by its slack keeps the worst within 5 %, moved further it does not, or it is stopped', () => {
  const keepOut = [{ fromTipM: 0.62, toTipM: 0.7 }];
  const of = request(1, { keepOut });
  const answer = found(of);
  const worstOf = readerOf(of, answer);
  const ceiling = 1.05 * worstOf(answer.fromTipM);
  let limited = 0;
  answer.slackM.forEach(({ towardsTip, towardsButt }, i) => {
    for (const move of [-towardsTip, towardsButt]) {
      const station = answer.fromTipM[i] + move;
      const at = (place: number) => worstOf(answer.fromTipM.with(i, place));
      expect(at(station)).toBeLessThan(ceiling * (1 + 5e-4));
      const further = station + Math.sign(move || (move === -towardsTip ? -1 : 1)) * 1e-3;
      const neighbours = [answer.fromTipM[i - 1] ?? 0, answer.fromTipM[i + 1] ?? of.rod.lengthM];
      const stopped =
        neighbours.some((other) => Math.abs(further - other) < 0.05) ||
        further > of.rod.lengthM - 2e-3 ||
        keepOut.some((zone) => further > zone.fromTipM && further < zone.toTipM);
      if (!stopped) {
        limited++;
        expect(at(further)).toBeGreaterThan(ceiling * (1 - 2e-3));
      }
    }
  });
  expect(limited).toBeGreaterThan(6);
});

test('stiffness, masses and loads scaled alike leave every mark where it is', () => {
  const of = request(3);
  const k = 2.5;
  const { ladder, limits, fromTipM } = found(of);
  const scaled = found({
    ...of,
    limits,
    rod: {
      ...of.rod,
      stiffness: of.rod.stiffness.map((row) => ({ ...row, EINm2: k * row.EINm2 })),
      massPerLength: of.rod.massPerLength!.map((row) => ({ ...row, kgPerM: k * row.kgPerM })),
    },
    guides: { ...of.guides, massesKg: of.guides.massesKg!.map((kg) => k * kg) },
    tipTop: { ...of.tipTop, massKg: k * of.tipTop.massKg! },
    ladder: ladder.map((load) => ({ ...load, tensionN: k * load.tensionN })),
  });
  scaled.fromTipM.forEach((station, i) => {
    expect(station).toBeCloseTo(fromTipM[i], 4);
  });
});

test('the answer repeats what it used: default limits, a ladder by the blank’s power, growing, the rule', () => {
  const of = request(1);
  const { limits, ladder, intervals, start, startScore } = found({ ...of, limits: { gapM: 0.02 } });
  expect(limits).toEqual({
    lineAngleRad: Math.PI / 12,
    gapM: 0.02,
    extraBendPerM: 0.125 / of.rod.lengthM,
  });
  expect(ladder.map((load) => load.tensionN / ladder[0].tensionN)).toEqual(
    [0.3, 0.8, 2, 5].map((share) => expect.closeTo(share / 0.3, 9)),
  );
  expect(ladder.every((load) => load.pullAngleRad === -Math.PI / 2)).toBe(true);
  expect(intervals).toBe('growing');
  expect(start.kind).toBe('arithmetic-rule');
  const steps = intervalsOf([0, ...start.fromTipM]);
  const second = intervalsOf(steps);
  second.forEach((step) => {
    expect(step).toBeCloseTo(second[0], 9);
  });
  expect(readerOf(of, { limits, ladder })(start.fromTipM)).toBeCloseTo(startScore.worst, 2);
});

test('a start that is as good as any is told from one that is not', () => {
  const of = request(1);
  const first = found(of);
  expect(first.verdict.startIsAsGood).toBe(false);
  expect(first.verdict.gain).toBeCloseTo(1 - first.score.worst / first.startScore.worst, 9);
  const again = found({ ...of, start: { fromTipM: first.fromTipM } });
  expect(again.verdict.startIsAsGood).toBe(true);
  const shrinking = found({
    ...of,
    start: { fromTipM: first.fromTipM.with(7, first.fromTipM[8] - 0.06) },
  });
  expect(shrinking.verdict.startIsAsGood).toBe(false);
  expect(shrinking.findings[0].path).toBe('start.fromTipM[8]');
});

test('two guides, both held, and a ladder without line tension still get an answer', () => {
  const two = { ...flyGuides(2), firstFromTipM: 0.3, strippingFromTipM: 1 };
  const held = found(request(2, two));
  expect(held.fromTipM).toEqual([0.3, 1]);
  expect(held.slackM).toHaveLength(2);
  const slackLine = found(request(2, { ladder: [{ tensionN: 0, pullAngleRad: -1.5, tiedN: 2 }] }));
  expect(slackLine.status).toBe('converged');
  expect(slackLine.score.extraBendPerM).toBe(0);
});

test('the request is not changed, and progress hears of better and better layouts', () => {
  const of = request(2, { keepOut: [{ fromTipM: 0.5, toTipM: 0.56 }] });
  const before = structuredClone(of);
  const heard: { stage: string; worst: number }[] = [];
  const answer = layout(of, ({ stage, worst }) => heard.push({ stage, worst }));
  expect(of).toEqual(before);
  expect(structuredClone(answer)).toEqual(answer);
  const least = heard.filter(({ stage }) => stage === 'least').map(({ worst }) => worst);
  expect(least).toEqual([...least].sort((a, b) => b - a));
  expect(heard[heard.length - 1].stage).toBe('smooth');
});

test('a smooth blank under its default ladder never snaps on the way', () => {
  const answer = found(request(1, { rod: smoothRod(nineFootFive) }));
  expect(answer.status).toBe('converged');
});
