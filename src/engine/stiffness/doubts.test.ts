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

/** Read at the clamp too, every flag measured from both ends. */
function checkedBench(seed: number): SimulatedBench {
  const plan = fullPlan(0.0015).map((setup) => ({ ...setup, checked: true }));
  return readBench(randomBlank(400 + seed, { sweepSigmaPerM: 0 }), plan, seed, 0);
}

// Where they fall ill the drops bear out the wrong tape, as on one of these six; the flag is then named at its other row.
test('a flag typed an inch off is named every time, five of six at its drops', () => {
  const flag = [0, 1, 2, 3].map((test) => `setups[0].tests[${test}].readings[4]`);
  const named = [1, 2, 3, 4, 5, 6].map((seed) => {
    const spoilt = structuredClone(checkedBench(seed).request) as Writable<FitRequest>;
    const { tests, flagChecks = [] } = spoilt.setups[0] as Writable<FitClampSetup>;
    const station = flagChecks[3].fromTipM;
    const rows = [...tests.flatMap(({ readings }) => readings), flagChecks[3]];
    for (const row of rows) if (row.fromTipM === station) row.fromTipM += 0.0254;
    return (fitStiffness(spoilt).slips ?? []).flat().flatMap(({ paths }) => paths);
  });
  expect(named.filter((paths) => flag.every((path) => paths.includes(path)))).toHaveLength(5);
  for (const paths of named)
    expect([...flag, 'setups[0].flagChecks[3]'].some((path) => paths.includes(path))).toBe(true);
});

test.each(seeds)(
  'the second tape misread is named itself where the drops bear out the first (seed %i)',
  (seed) => {
    const paths = pathsAfter(checkedBench(seed), ({ flagChecks = [] }) => {
      flagChecks[1].fromClampM += 0.0254;
    });
    expect(paths).toEqual(['setups[0].flagChecks[1]']);
  },
);

test.each(seeds)(
  'another edge than stated shows at the clamp and is named at its set-up (seed %i)',
  (seed) => {
    const clean = checkedBench(seed);
    const paths = pathsAfter(clean, ({ tests }) => {
      for (const { readings } of tests) {
        for (const reading of readings) reading.dropM += 0.5 * clean.blank.outsideM(reading.fromTipM);
      }
    });
    expect(paths).toEqual(['setups[0]']);
  },
);

test('a second tape behind the clamp is refused at its field', () => {
  const { request } = checkedBench(1);
  const wrong = structuredClone(request) as Writable<FitRequest>;
  const [check] = (wrong.setups[0] as Writable<FitClampSetup>).flagChecks ?? [];
  check.fromClampM = 50;
  const { answer } = fitStiffness(wrong);
  expect(answer.status).toBe('refused');
  expect(answer.findings.map(({ path }) => path)).toEqual(['setups[0].flagChecks[0].fromClampM']);
});
