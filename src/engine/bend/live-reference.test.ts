import { expect, test } from 'vitest';
import { assertGroup } from '../../../reference/cases/check.ts';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { rubbingRods, scipyGroup } from '../../../reference/live/groups.ts';

// the quick ones; `npm run verify` runs all six, and CalculiX
const quick = [...realisticRods.filter(({ name }) => /glass|spinning|casting/.test(name)), ...rubbingRods];

test('realistic rods, line free and rubbing, bend as a boundary-value solve of their statics says', ({
  skip,
}) => {
  const group = scipyGroup(quick);
  if ('notRun' in group) return skip(`not run: ${group.notRun}`);
  expect(group.checks).toHaveLength(21);
  assertGroup(group);
});
