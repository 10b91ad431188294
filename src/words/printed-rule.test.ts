import { expect, test } from 'vitest';
import { printedRuleWords } from './printed-rule.ts';

test('a printed rule is asked for no finer than a tape shows', () => {
  expect(printedRuleWords('inch')).toMatch(/right to 1⁄64 in over/);
  expect(printedRuleWords('mm')).toMatch(/right to 0\.5 mm over/);
});
