import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { openBuild } from '../src/cli/open-build.ts';
import { assembleBlank } from '../src/engine/bench/assemble.ts';
import { diameterProfile } from '../src/engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../src/engine/bench/estimate.ts';
import { answerCounts, type CountsAnswer } from '../src/engine/flow/count-answer.ts';
import { feltAtTipKg } from '../src/engine/flow/felt-at-tip.ts';
import { withGuideCount } from '../src/engine/flow/guide-count.ts';
import { layoutQuestion } from '../src/engine/flow/layout-question.ts';
import { layout } from '../src/engine/layout/layout.ts';

const opened = openBuild(fileURLToPath(new URL('../examples/demo-build.json', import.meta.url)));
const bench = opened.bench!;
const choices = opened.choices!;
const blank = assembleBlank(bench.sections);
const diameters = diameterProfile(bench.sections, blank);
/** Stiffness by the diameters alone: a fit would be slower and asks nothing more of this. */
const question = { bench, choices, blank, diameters, tables: estimateFromDiameters(diameters, 'carbon') };

describe('the same set with another number of guides', () => {
  const own = choices.guides;

  test('the stripping guide, first and last mark stay; running sizes keep their shares', () => {
    for (const count of [own.length - 2, own.length - 1, own.length + 1, own.length + 3]) {
      const { guides, start, dress } = withGuideCount(choices, count);
      expect(guides).toHaveLength(count);
      expect(dress.feet).toHaveLength(count);
      expect(guides.at(-1)).toMatchObject({ kind: 'stripping', size: own.at(-1)?.size });
      expect(start).toMatchObject({
        count,
        firstFromTipM: own[0].stationM,
        strippingFromTipM: own.at(-1)?.stationM,
      });
      guides.slice(1).forEach(({ massKg }, i) => {
        expect(massKg).toBeGreaterThanOrEqual(guides[i].massKg);
      });
      guides.forEach(({ kind, size }, i) => {
        expect(dress.feet[i].name).toBe(`${kind} ${size}`);
      });
    }
    expect(withGuideCount(choices, own.length)).toBe(choices);
  });

  test('two guides are a running guide and the stripping guide', () => {
    expect(withGuideCount(choices, 2).guides.map(({ kind }) => kind)).toEqual(['snake', 'stripping']);
  });
});

describe('how many guides', () => {
  const heard: CountsAnswer[] = [];
  const answer = answerCounts(question, (soFar) => heard.push(soFar), { beside: 1, furtherUp: 1 });

  test('each number is the layout that would be placed for it', () => {
    const { count, fromTipM, worst } = answer.counts[0];
    const alone = layout(layoutQuestion({ ...question, choices: withGuideCount(choices, count) }).request);
    expect(alone).toMatchObject({ fromTipM, score: { worst } });
  });

  test('more guides read better, weigh more, are felt more and swing slower', () => {
    expect(answer.counts.length).toBeGreaterThanOrEqual(3);
    answer.counts.slice(1).forEach((more, i) => {
      const fewer = answer.counts[i];
      expect(more.count).toBe(fewer.count + 1);
      expect(more.worst).toBeLessThan(fewer.worst);
      expect(more.addedKg).toBeGreaterThan(fewer.addedKg);
      expect(more.feltAtTipKg).toBeGreaterThan(fewer.feltAtTipKg);
      expect(more.feltAtTipKg).toBeLessThan(more.addedKg);
      expect(more.firstHz!.loose).toBeLessThan(fewer.firstHz!.loose);
    });
  });

  test('the fewest that keep the limits are the first that do, and no more than asked are placed', () => {
    const keeps = answer.counts.filter(({ keepsLimits }) => keepsLimits).map(({ count }) => count);
    expect(answer.fewest).toBe(keeps[0]);
    expect(answer.counts.length).toBeLessThanOrEqual(4);
    expect(heard).toHaveLength(answer.counts.length);
    expect(heard.at(-1)).toEqual(answer);
    expect(answer.fewestClear).toBeUndefined();
  });
});

test('with guides on top every number says at which loads the line stays clear', () => {
  const over = { ...question, choices: { ...choices, side: 'over' as const } };
  const { counts, fewestClear = [] } = answerCounts(over, undefined, { beside: 1, furtherUp: 0 });
  expect(fewestClear).toHaveLength(counts[0].onBlank!.length);
  fewestClear.forEach((fewest, load) => {
    expect(fewest).toBe(counts.find(({ onBlank }) => onBlank![load].clear)?.count);
  });
  // the deepest bend lies on the blank with so few
  expect(counts[0].onBlank!.at(-1)!.clear).toBe(false);
  expect(counts[0].onBlank![0].foregripClearM).toBeUndefined();
});

test('with guides on top more are tried until the line is off the blank too', () => {
  const heavy = {
    ...choices,
    side: 'over' as const,
    ladderKg: [0.5],
    limits: { lineAngleRad: 0.6, gapM: 0.1, extraBendPerM: 5, intoBlankM: 0.1 },
  };
  const own = { ...heavy, guides: choices.guides.slice(-8) };
  const { counts, fewest } = answerCounts({ ...question, choices: own }, undefined, {
    beside: 0,
    furtherUp: 1,
  });
  expect(fewest).toBe(8);
  expect(counts[0].onBlank![0].clear).toBe(false);
  expect(counts.map(({ count }) => count)).toEqual([8, 9]);
});

describe('of an invented casting rod', () => {
  const spiral = openBuild(fileURLToPath(new URL('../examples/demo-casting-spiral.json', import.meta.url)));
  const parts = { bench: spiral.bench!, choices: spiral.choices! };
  const asked = (gripDiameterM: number) => {
    const line = { ...parts.choices.line!, gripDiameterM };
    const own = assembleBlank(parts.bench.sections);
    const profile = diameterProfile(parts.bench.sections, own);
    const tables = estimateFromDiameters(profile, 'carbon');
    const choices = { ...parts.choices, line };
    const only = { beside: 0, furtherUp: 0 };
    return answerCounts({ ...parts, choices, blank: own, diameters: profile, tables }, undefined, only);
  };

  test('a foregrip that the line rubs on counts against every number of guides, in a spiral too', () => {
    const at = asked(0.12).counts[0].onBlank!;
    // reel and first guide stand about 0.04 m off the axis
    at.forEach(({ clear, foregripClearM }) => {
      expect(foregripClearM).toBeLessThan(-0.02);
      expect(foregripClearM).toBeGreaterThan(-0.06);
      expect(clear).toBe(false);
    });
  });
});

test('a mass is felt by the square of how far it moves: a uniform rod’s 1 − 3ξ/2 + ξ³/2', () => {
  const rod = { lengthM: 2, stiffness: [{ fromTipM: 0, EINm2: 3 }] };
  for (const share of [0, 0.2, 0.5, 0.9]) {
    const felt = feltAtTipKg(rod, [{ fromTipM: 2 * share, massKg: 1 }]);
    expect(felt).toBeCloseTo((1 - 1.5 * share + 0.5 * share ** 3) ** 2, 5);
  }
});
