import { expect, test } from 'vitest';
import {
  dropOn,
  fullPlan,
  randomBlank,
  readBench,
  type SimulatedBench,
  trueCurve,
} from '../../../test/support/simulated-bench.ts';
import { fitStiffness } from './fit.ts';
import type { FitClampSetup, FitRequest } from './request.ts';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;

const seeds = [1, 2];

function bench(seed: number): SimulatedBench {
  return readBench(randomBlank(400 + seed, { sweepSigmaPerM: 0 }), fullPlan(0.0015), seed, 0);
}

/** What is named beyond what the clean bench raises. */
function pathsAfter({ request }: SimulatedBench, spoil: (setup: Writable<FitClampSetup>) => void): string[] {
  const spoilt = structuredClone(request) as Writable<FitRequest>;
  spoil(spoilt.setups[0] as Writable<FitClampSetup>);
  const alarms = pathsOf(request);
  return pathsOf(spoilt).filter((path) => !alarms.includes(path));
}

function pathsOf(request: FitRequest): string[] {
  return fitStiffness(request).answer.findings.map(({ path }) => path);
}

// The second of these is one of the one or two in a hundred where chance looks like a flag that stands elsewhere:
// the flag at 80 in, 83 mm off, evidence 6.4 where 5.5 is asked. Counted over many: slips.test.ts.
test('of six clean benches one raises an alarm', () => {
  const alarms = [1, 2, 3, 4, 5, 6].filter((seed) => pathsOf(bench(seed).request).length > 0);
  expect(alarms).toEqual([2]);
});

test.each(seeds)('an inch misread is named at its reading, alone (seed %i)', (seed) => {
  const reading = seed % 7;
  const paths = pathsAfter(bench(seed), ({ tests }) => {
    tests[2].readings[reading].dropM += seed % 2 === 0 ? 0.0254 : -0.0254;
  });
  expect(paths).toEqual([`setups[0].tests[2].readings[${reading}]`]);
});

test.each(seeds)('two loads swapped are named at both tests (seed %i)', (seed) => {
  const [a, b] = [seed % 3, 3];
  const paths = pathsAfter(bench(seed), ({ tests }) => {
    const { hung } = tests[a];
    tests[a].hung = tests[b].hung;
    tests[b].hung = hung;
  });
  expect(paths).toEqual([`setups[0].tests[${a}]`, `setups[0].tests[${b}]`]);
});

test.each(seeds)(
  'a clamp that slips by 1° between tests is named at the first test after it (seed %i)',
  (seed) => {
    const clean = bench(seed);
    const { blank, tiltRad } = clean;
    const first = 1 + (seed % 3);
    const paths = pathsAfter(clean, ({ tests }) => {
      for (const { hung = [], readings } of tests.slice(first)) {
        const load = { clampFromTipM: blank.lengthM, turnedRad: 0, hung };
        const before = trueCurve(blank, { ...load, buttAngleRad: tiltRad[0] });
        const after = trueCurve(blank, {
          ...load,
          buttAngleRad: tiltRad[0] + Math.PI / 180,
        });
        for (const reading of readings) {
          reading.dropM += dropOn(after, reading.fromTipM, 0) - dropOn(before, reading.fromTipM, 0);
        }
      }
    });
    expect(paths).toEqual([`setups[0].tests[${first}]`]);
  },
);

test('a drop that no blank of this length can have is left out and named', () => {
  const clean = bench(1);
  const paths = pathsAfter(clean, ({ tests }) => {
    tests[1].readings[2].dropM *= 1000;
  });
  expect(paths).toEqual(['setups[0].tests[1].readings[2]']);
});

test('a weight typed ten times too heavy is named at its test', () => {
  const paths = pathsAfter(bench(2), ({ tests }) => {
    tests[2].hung = [{ fromTipM: 0, massKg: 0.8 }];
  });
  expect(paths).toEqual(['setups[0].tests[2]']);
});
