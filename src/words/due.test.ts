import { expect, test } from 'vitest';
import type { Due } from '../engine/finish/schedule.ts';
import { dueWords, isCalm } from './due.ts';

test('that the rod may be used again is told calmly; what spoils a coat is an alarm', () => {
  expect((Object.keys(dueWords) as Due[]).filter(isCalm)).toEqual(['flex', 'fish']);
});
