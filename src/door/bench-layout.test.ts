/** The chain from a bench to marks through the door, and brief answers. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { answerRequest } from './answer-request.ts';
import { operations } from './operations.ts';
import { failed, refused } from './shapes/measures.ts';

type Json = Record<string, unknown>;
interface Answered {
  status: string;
  fromTipM: number[];
  start: { fromTipM: number[] };
  score: { worst: number };
  verdict: { startIsAsGood: boolean; text: string };
  findings: { path: string; message: string }[];
  sureness: {
    worst: { expected: number; low: number; high: number };
    betterThanStart: number;
    costOfKeeping: number;
    markSigmaM: number[];
  };
}
const requests: Json[] = readFileSync(
  new URL('../../examples/engine/requests.jsonl', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line));
const request = (op: string) => structuredClone(requests.find((one) => one.op === op) as Json);

/** The example's fit, and the example's guides on it. */
function benchLayout() {
  const { op: _, ...bench } = request('fit') as { op: string; blank: Json; setups: unknown[] };
  const { rod: __, ...asked } = request('layout');
  const freeM = (bench.blank.lengthM as number) - 0.3;
  return { bench, asked: { ...asked, bench, freeM } as Json };
}

async function answered(asked: Json): Promise<Answered> {
  const answer = (await answerRequest(asked)) as Answered;
  const shape = z.union([operations.layout.answer, refused, failed]);
  expect(shape.safeParse(JSON.parse(JSON.stringify(answer))).error).toBeUndefined();
  return answer;
}

describe('layout from a bench', () => {
  it('answers marks on the likeliest blank and how sure they are over all that fit', async () => {
    const { asked } = benchLayout();
    const { status, fromTipM, score, sureness } = await answered(asked);
    expect(status).toBe('converged');
    const { worst, betterThanStart, costOfKeeping, markSigmaM } = sureness;
    expect(worst.low).toBeLessThan(worst.expected);
    expect(worst.expected).toBeLessThan(worst.high);
    expect(score.worst).toBeLessThan(worst.high);
    expect(betterThanStart).toBeLessThanOrEqual(1);
    expect(costOfKeeping).toBeGreaterThanOrEqual(0);
    expect(markSigmaM).toHaveLength(fromTipM.length);
    // first and stripping guide are given
    expect(markSigmaM[0]).toBeCloseTo(0, 9);
    expect(Math.max(...markSigmaM)).toBeGreaterThan(1e-3);
  });

  it('with no reading at all is the start, and says why', async () => {
    const { asked, bench } = benchLayout();
    const { fromTipM, start, sureness, findings, verdict } = await answered({
      ...asked,
      bench: { ...bench, setups: [] },
    });
    expect(fromTipM).toEqual(start.fromTipM);
    expect(sureness.betterThanStart).toBe(0);
    expect(verdict).toMatchObject({
      startIsAsGood: false,
      text: expect.stringMatching(/^Keep the start. Nothing/),
    });
    expect(findings.find(({ path }) => path === 'start')?.message).toMatch(
      /^Keep the start\. Nothing was read/,
    );
    expect(findings.some(({ path }) => path === 'bench.setups')).toBe(true);
  });

  it.each<[string, Json, string, RegExp]>([
    ['neither rod nor bench', { bench: undefined, freeM: undefined }, 'rod', /give the rod, or a bench/],
    ['no length in front of the grip', { freeM: undefined }, 'freeM', /is missing/],
    ['a grip behind the butt', { freeM: 9 }, 'freeM', /9 m is more than the blank's/],
    ['a bench beside a rod', { rod: (request('layout') as { rod: unknown }).rod }, 'bench', /one of the two/],
  ])('%s is refused at its field', async (_, change, path, words) => {
    const { asked } = benchLayout();
    const answer = await answered({ ...asked, ...change });
    expect(answer.status).toBe('refused');
    const found = answer.findings.find((finding) => finding.path === path);
    expect(found?.message).toMatch(words);
  });

  it('what the fit refuses is refused at its field inside the bench', async () => {
    const { asked, bench } = benchLayout();
    const answer = await answered({ ...asked, bench: { ...bench, blank: { ...bench.blank, lengthM: 0.1 } } });
    expect(answer.status).toBe('refused');
    expect(answer.findings.every(({ path }) => path === 'freeM' || path.startsWith('bench.'))).toBe(true);
  });
});

describe('a fit', () => {
  it('without any reading says so', async () => {
    const { bench } = benchLayout();
    const answer = (await answerRequest({ op: 'fit', ...bench, setups: [] })) as Answered;
    expect(answer.status).toBe('converged');
    expect(answer.findings).toEqual([
      { path: 'setups', message: expect.stringMatching(/the stiffness is a guess/) },
    ]);
  });
});

describe('a brief answer', () => {
  it.each(['bend', 'fit', 'layout', 'frequency', 'rotation'])(
    'of %s is the whole one without its long tables',
    async (op) => {
      const whole = (await answerRequest(request(op))) as Json;
      const brief = (await answerRequest({ ...request(op), answer: 'brief' })) as Json;
      const { tip, ...rest } = brief;
      expect(operations[op].answer.safeParse(JSON.parse(JSON.stringify(brief))).error).toBeUndefined();
      const long = ['points', 'stiffness', 'massPerLength', 'restCurvature'];
      expect(rest).toEqual(Object.fromEntries(Object.entries(whole).filter(([key]) => !long.includes(key))));
      if (op !== 'bend') return;
      const [{ xM, yM, angleRad }] = whole.points as { xM: number; yM: number; angleRad: number }[];
      expect(tip).toEqual({ xM, yM, angleRad });
    },
  );

  it('is asked for by that word alone', async () => {
    const answer = (await answerRequest({ ...request('bend'), answer: 'short' })) as Answered;
    expect(answer.findings).toEqual([{ path: 'answer', message: 'answer is "short"; give "brief"' }]);
  });
});
