import { expect, test } from 'vitest';
import { fileName } from './hand-over.ts';

test.each([
  ['9 ft 5-weight / Ødegård', '9-ft-5-weight-ødegård'],
  ['Щука: "№ 3"', 'щука-3'],
  ['釣り竿', '釣り竿'],
  ['../..\\CON?*', 'con'],
  ['🎣', 'build'],
  ['', 'build'],
])('the file of "%s" is called %s', (title, name) => {
  expect(fileName(title)).toBe(name);
});

test('a long title stays within what file systems allow', () => {
  expect(new TextEncoder().encode(`${fileName('竿'.repeat(300))}-strips-letter.pdf`).length).toBeLessThan(
    255,
  );
});
