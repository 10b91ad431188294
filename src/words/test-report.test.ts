import { expect, test } from 'vitest';
import { type TestReport, testReportOf, testReportText } from '../record/test-report.ts';
import { testReportWords } from './test-report.ts';
import { shopWriter } from './writer.ts';

const found: TestReport = {
  rod: 'taped',
  hungKg: 0.06,
  buttAngleRad: 0.1,
  lengthM: 2.3,
  picture: 'bend.jpg',
  readOn: '2026-05-01T09:00:00Z',
  marksRmsM: 0.001,
  engineVersion: '0.2.0',
  closeUps: [
    { photo: { name: 'near.jpg' }, why: { code: 'load-test/close-up-tip', values: { beyondM: 0.02 } } },
  ],
  places: [
    { fromTipM: 0, outM: 1.9, upM: -0.4, apartM: 0.01, reachM: 0.03 },
    { fromTipM: 0.5, outM: 1.6, upM: -0.1, apartM: 0.004 },
  ],
  doubts: [{ code: 'load-test/butt-angle', values: { seenRad: 0.1, typedRad: 0.2 } }],
  odd: [{ path: 'marks[0].atM', code: 'camera/same-place', values: { mark: 1, otherMark: 2 } }],
  marks: ['lower-left', 'mark-7'],
};
const inches = shopWriter({ system: 'inch' });
const said = (text: string | undefined) =>
  testReportWords(testReportOf(text), (lengthM) => inches.length(lengthM), inches);

test('what an accepted test found is kept as data, without a sentence, and read back equal', () => {
  const text = testReportText(found);
  expect(text).not.toMatch(/\s/);
  expect(testReportOf(text)).toEqual(found);
});

test('it is said in the units of whoever reads it, no metric figure in an inch shop', () => {
  const lines = said(testReportText(found)).split('\n');
  expect(lines).toHaveLength(7);
  expect(lines[0]).toBe('Taped-up rod, 60 g on the tip, butt 5.7° above level by the picture.');
  expect(lines[2]).toMatch(/^The close-up near\.jpg is not used: Tap the tip again/);
  expect(lines[3]).toMatch(/^Tip: .* out, .* up; .* off the prediction, allowed ± .*\.$/);
  expect(lines[5]).toMatch(/By the picture the butt rises 5\.5°; you entered 11\.5°\.$/);
  expect(lines[6]).toBe('Correct the lower left corner or mark 7. Both have the same place.');
  expect(lines.filter((line) => /\d m{1,2}\b/.test(line))).toEqual([]);
});

test('a shop that weighs in ounces reads ounces', () => {
  const ounces = shopWriter({ system: 'inch', weighsIn: 'oz' });
  const [head] = testReportWords(found, (lengthM) => ounces.length(lengthM), ounces).split('\n');
  expect(head).toContain(', 2.12 oz on the tip,');
});

test('a record of 0.1 kept sentences: they are read as they were written', () => {
  const then = 'Taped-up rod, 60 g on the tip.\nTip: 48 in out.';
  expect(said(then)).toBe(then);
  expect(said(undefined)).toBe('');
});

test('what no report can be read from is nothing, and a kind that nobody knows is passed over', () => {
  expect(said('{"rod":"taped"')).toBe('');
  expect(said('{"rod":"taped"}')).toBe('');
  const later = { ...found, doubts: [{ code: 'load-test/of-a-later-version', values: {} }] };
  expect(said(testReportText(later)).split('\n')).toHaveLength(6);
});

test('where there is no room the last of what was odd is left out', () => {
  const long = { path: 'via[0]', code: 'trace/lost', values: { words: 'x'.repeat(9000) } };
  const kept = testReportOf(testReportText({ ...found, odd: [long, long, long] }));
  expect(kept).toMatchObject({ odd: [long, long] });
});
