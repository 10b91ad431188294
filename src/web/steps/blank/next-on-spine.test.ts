import { expect, test } from 'vitest';
import type { Row } from '../../../record/document.ts';
import { nextOnSpine } from './next-on-spine.ts';

const section = (id: string, name: string, sided = false): Row => ({
  id,
  fields: { name, ...(sided ? { lineSideAngle: { si: 0, text: '0°' } } : {}) },
});

const done = { words: '', done: true };
const missing = { words: '', at: 'readings/r/drop' };
const rod = (isMarked: boolean, isTested: boolean) => ({ isMarked, isTested });

test('section after section is led to its line side', () => {
  const [tip, butt] = [section('a', 'tip', true), section('b', 'butt')];
  expect(nextOnSpine([section('a', 'tip'), butt], rod(false, false), done).at).toBe(
    'sections/a/lineSideAngle',
  );
  expect(nextOnSpine([tip, butt], rod(false, false), done)).toMatchObject({
    words: expect.stringMatching(/^Roll butt/),
    at: 'sections/b/lineSideAngle',
  });
});

test('with every side chosen it leads on to what waited for it, or to what is missing on the bench', () => {
  const sided = [section('a', 'tip', true)];
  expect(nextOnSpine(sided, rod(true, false), done).goOn).toBe('load-test');
  expect(nextOnSpine(sided, rod(true, true), done).goOn).toBe('handle');
  expect(nextOnSpine(sided, rod(false, false), done).goOn).toBe('handle');
  expect(nextOnSpine(sided, rod(true, false), missing)).toBe(missing);
});
