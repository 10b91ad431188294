import { expect, test } from 'vitest';
import { assertGroup } from '../../../reference/cases/check.ts';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { scipyGroup } from '../../../reference/live/groups.ts';

// the quick ones; `npm run verify` runs all six, and CalculiX
const quick = realisticRods.filter(({ name }) => /glass|spinning|casting/.test(name));

test('three realistic rods bend as a boundary-value solve of their statics says', ({ skip }) => {
  const group = scipyGroup(quick);
  if ('notRun' in group) return skip(`not run: ${group.notRun}`);
  expect(group.checks).toHaveLength(9);
  assertGroup(group);
});
