import { describe, expect, it } from 'vitest';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import { ladderWriter } from './ladder-writer.ts';
import { unsteadyInWords, type VerdictParts, verdictInWords } from './verdict.ts';
import { shopWriter } from './writer.ts';

const writer = ladderWriter(shopWriter({ system: 'inch' }), [0.05, 0.51]);
const limit = Math.PI / 12;

/** A reading whose worst is a line angle this many times its limit, at guide 7 under the heavier load. */
function reading(worst: number, guide = 7): RuledReading {
  const worstAt = { metric: 'lineAngle', load: 1, index: guide, value: worst * limit, limit, ratio: worst };
  return { status: 'converged', loads: [], worst, worstAt } as unknown as RuledReading;
}
const parts = (change: Partial<VerdictParts>): VerdictParts => ({
  ours: reading(1),
  startName: 'arithmetic rule',
  start: reading(1.3, 9),
  atStart: false,
  startBroken: false,
  best: reading(1),
  otherRule: undefined,
  intervals: 'growing',
  ...change,
});
const judgement = (change: Partial<VerdictParts>) => verdictInWords(parts(change), writer).judgement;

describe('the verdict', () => {
  it('names the start’s worst in the bench’s words, never as a share of a limit', () => {
    const { start } = verdictInWords(parts({}), writer);
    expect(start).toBe('Start (arithmetic rule): guide 9 at 510 g, line angle 19.5° of 15°.');
    for (const words of Object.values(verdictInWords(parts({ otherRule: reading(0.8) }), writer)))
      expect(words).not.toMatch(/% of/);
  });
  it('says plainly when the start is within a tenth of the best', () => {
    for (const start of [reading(1), reading(1.09)]) {
      expect(judgement({ start, ours: start, atStart: true })).toBe(
        'Your start is as good as any on this blank.',
      );
      expect(judgement({ start, ours: reading(1) })).toMatch(/^Your start is as good as any/);
      expect(judgement({ start, ours: reading(1.4) })).toMatch(/better than these marks/);
    }
    expect(judgement({ start: reading(1.11), ours: reading(1.11), atStart: true })).not.toMatch(/as good/);
  });
  it('never calls a start good that stands on a ferrule', () => {
    expect(judgement({ start: reading(1), startBroken: true })).not.toMatch(/as good as any/);
    expect(judgement({ start: reading(1), startBroken: true })).toMatch(/ferrule/);
  });
  it('says which of the two is better, and calls small differences none', () => {
    expect(judgement({ ours: reading(1) })).toBe('These marks are better than the start.');
    expect(judgement({ ours: reading(1.24) })).toMatch(/^These marks are a little better than the start\./);
    expect(judgement({ ours: reading(1.31) })).toMatch(/^These marks and the start are equally good\./);
    expect(judgement({ ours: reading(1.5) })).toMatch(/^These marks are worse than the start\./);
  });
  it('says what placing would bring while it would bring something', () => {
    expect(judgement({ ours: reading(1.3), atStart: true })).toBe(
      'Placed for this blank, the worst would be guide 7 at 510 g, line angle 15° of 15°.',
    );
    expect(judgement({ ours: reading(1.05) })).not.toMatch(/Placed for this blank/);
  });
  it('says what the other rule for intervals would change', () => {
    const other = (change: Partial<VerdictParts>) => verdictInWords(parts(change), writer).otherRule;
    expect(other({})).toBe('');
    expect(other({ otherRule: reading(0.99) })).toBe('Spacing that may also shrink would gain nothing.');
    expect(other({ otherRule: reading(0.8, 5) })).toMatch(/may also shrink .* drops to guide 5 at 510 g/);
    expect(other({ intervals: 'free', otherRule: reading(1.2) })).toMatch(/^With growing intervals/);
    expect(other({ intervals: 'free', otherRule: reading(1.01) })).toBe(
      'Growing intervals would cost nothing.',
    );
  });
});

describe('loads without a steady bend', () => {
  it('are named with what became of them', () => {
    const loads = [{ status: 'converged' }, { status: 'not-converged' }];
    expect(unsteadyInWords({ loads } as unknown as RuledReading, writer)).toBe(
      'At 510 g no steady bend was found. That load does not count.',
    );
    const steady = { loads: [{ status: 'converged' }] } as unknown as RuledReading;
    expect(unsteadyInWords(steady, writer)).toBe('');
  });
});
