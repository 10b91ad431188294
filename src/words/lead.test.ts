import { expect, test } from 'vitest';
import { leadInWords } from './lead.ts';

const counts = { better: 76, worse: 2, of: 100 };

test('what is wanted is told with what is seen', () => {
  expect(leadInWords({ ...counts, wanted: 87, oneHold: true })).toBe(
    'Other marks are better on 76 of 100 blanks that fit your readings. With the clamp in one place, 87 of 100 are wanted. On 2 they are worse by over 3 %.',
  );
  expect(leadInWords({ ...counts, wanted: 80, oneHold: false })).toMatch(
    / readings\. 80 of 100 are wanted\. On 2 /,
  );
});

test('where enough are better, that they lose more than they gain', () => {
  expect(leadInWords({ better: 91, worse: 9, of: 100, wanted: 80, oneHold: false })).toMatch(
    / readings\. On 9 they are worse by over 3 %, and that weighs more\.$/,
  );
});
