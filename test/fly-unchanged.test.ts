/** Fly rods keep the numbers they had before rods of other kinds got limits, reels and lines of their own. */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { openBuild } from '../src/cli/open-build.ts';
import { workBuildFile } from '../src/cli/work-build-file.ts';

interface Numbers {
  ladderKg: number[];
  startWorst: number;
  proposedFromTipM: number[];
}
/** Written down from the program as it was then; byte for byte the same reports on the day these rods came in. */
const before: Record<string, Numbers> = {
  'nine-foot-four-piece': {
    ladderKg: [0.03, 0.075, 0.18, 0.46],
    startWorst: 1.3223578706098675,
    proposedFromTipM: [
      0.1143, 0.234697, 0.377538, 0.554152, 0.756896, 0.970245, 1.198659, 1.450679, 1.714208, 1.98755,
    ],
  },
  'two-piece-spigot': {
    ladderKg: [0.019, 0.05, 0.13, 0.32],
    startWorst: 1.7190511799122892,
    proposedFromTipM: [0.089, 0.220472, 0.383344, 0.580873, 0.80408, 1.045756, 1.302439, 1.575],
  },
  'two-hander': {
    ladderKg: [0.055, 0.14, 0.36, 0.9],
    startWorst: 0.9294810092188223,
    proposedFromTipM: [
      0.1397, 0.288636, 0.446809, 0.614218, 0.790864, 0.976745, 1.171864, 1.376218, 1.589809, 1.812636,
      2.0447, 2.286,
    ],
  },
  'demo-build': {
    ladderKg: [0.05, 0.1, 0.2, 0.4],
    startWorst: 1.1913653464726168,
    proposedFromTipM: [
      0.1143, 0.237903, 0.371221, 0.513943, 0.66455, 0.819925, 0.975299, 1.130674, 1.329526, 1.624451,
      1.98755,
    ],
  },
};

test.each(Object.entries(before))('%s: loads, start and proposed marks are what they were', (name, then) => {
  const path = fileURLToPath(new URL(`../examples/${name}.json`, import.meta.url));
  const { choices, work } = workBuildFile(openBuild(path));
  const { question, best, readings } = work;
  expect(choices.line).toBeUndefined();
  expect(question.request.limits).not.toHaveProperty('firstLineAngleRad');
  expect(question.loads.kg).toEqual(then.ladderKg);
  expect(readings.start?.worst).toBeCloseTo(then.startWorst, 9);
  expect(best.fromTipM).toHaveLength(then.proposedFromTipM.length);
  best.fromTipM.forEach((mark, i) => {
    expect(mark).toBeCloseTo(then.proposedFromTipM[i], 5);
  });
});
