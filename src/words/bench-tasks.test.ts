import { describe, expect, it } from 'vitest';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { handleDefaults } from '../engine/handle/handle-parts.ts';
import { planHandle } from '../engine/handle/plan-handle.ts';
import { planWraps } from '../engine/wraps/plan-wraps.ts';
import { wrapDefaults } from '../engine/wraps/wrap-choices.ts';
import { type BenchWork, benchTasks } from './bench-tasks.ts';
import { shopWriter } from './writer.ts';

const joint = { kind: 'sleeve' as const, overlapM: 0.05, gapM: 0, plugM: 0 };
const section = { id: 's', name: 'tip', lengthM: 1.2, diameters: [] };
const blank = assembleBlank([
  { ...section, joint },
  { ...section, id: 't', name: 'butt' },
]);
const profile = [
  { fromTipM: 0, outsideM: 0.0018 },
  { fromTipM: 2.35, outsideM: 0.0092 },
];
const handle = planHandle(
  {
    ...handleDefaults,
    gripFrontM: 0.26,
    gripLengthM: 0.165,
    gripBoreM: 0.0064,
    seatLengthM: 0.09,
    seatBoreM: 0.0105,
  },
  { lengthM: 2.35, buttSectionM: 1.15, profile },
);
const guide = { name: 'snake 1', lengthM: 0.0225, feet: 2 as const, stripping: false };
const { wraps } = planWraps({
  blank,
  profile,
  guides: [0.11, 1.6].map((stationM, index) => ({ ...guide, id: `g${index}`, stationM })),
  gripFrontFromButtM: 0.26,
  choices: wrapDefaults,
});
const work: BenchWork = {
  blank,
  step: '1 mm',
  writer: shopWriter({ system: 'mm' }),
  handle,
  marks: [],
  wraps,
  trimTurnsWord: 'in the trim',
};

describe('the work in pieces', () => {
  it('is every reaming step, arbor and wrap once, each under a name of its own that stays', () => {
    const tasks = benchTasks(work);
    expect(tasks.map(({ stage }) => stage)).toEqual([
      ...Array(handle?.reaming.length).fill('handle'),
      ...Array(3).fill('handle'),
      'handle',
      'handle',
      ...Array(wraps.length).fill('wraps'),
    ]);
    expect(new Set(tasks.map(({ id }) => id)).size).toBe(tasks.length);
    const moved = planWraps({
      blank,
      profile,
      guides: [0.13, 1.5].map((stationM, index) => ({ ...guide, id: `g${index}`, stationM })),
      gripFrontFromButtM: 0.26,
      choices: wrapDefaults,
    });
    expect(benchTasks({ ...work, wraps: moved.wraps }).map(({ id }) => id)).toEqual(
      tasks.map(({ id }) => id),
    );
  });
  it('reads where a wrap starts and ends as the tape does on that section', () => {
    const task = benchTasks(work).find(({ id }) => id === 'wrap-guide-2-tip-side');
    const wrap = wraps.find(({ id }) => id === 'foot/2/tip');
    expect(task?.figure).toBe(
      `${Math.round(1000 * (wrap?.startFromOwnTipM ?? 0))} mm to ${Math.round(1000 * (wrap?.endFromOwnTipM ?? 0))} mm`,
    );
    expect(task?.lines[0]).toMatch(/^On butt, /);
  });
  it('what cannot be undone is a gate', () => {
    const batch = { batches: 2, partA: 2.5, partB: 2.5, unit: 'ml' as const, batchMl: 5, measureStep: 0.1 };
    expect(
      benchTasks({ ...work, batch })
        .filter(({ gate }) => gate)
        .map(({ id }) => id),
    ).toEqual(['glue', 'glue-tip-top', 'coat']);
    expect(benchTasks({ ...work, batch, wraps: [] }).some(({ stage }) => stage === 'finish')).toBe(false);
  });
});
