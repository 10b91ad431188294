import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { change, history } from '../../test/kit/arbitrary-record.ts';
import type { Operation, Path } from './operation.ts';
import type { FieldValue } from './schema.ts';
import { validateOperation, validateValue } from './validate.ts';

const length: Path = ['sections', 's1', 'length'];

function operation(changes: Partial<Operation>): unknown {
  const value = { si: 0.7, text: '70 cm' };
  const at = '2026-03-01T09:00:00Z';
  const made = { id: 'd1-a.3.0', device: 'd1-a', clock: 3, gesture: 'edit.k3', path: length, old: null };
  return { ...made, value, at, ...changes };
}

test('whatever a device can write is let in', () => {
  fc.assert(
    fc.property(history, change, (log, { path, value }) => {
      for (const made of log) expect(validateOperation('build', made)).toEqual([]);
      expect(validateValue('build', path, value)).toEqual([]);
    }),
    { seed: 9, numRuns: 300 },
  );
});

test('a finding names the field, the value and the remedy', () => {
  expect(validateValue('build', length, { si: 70, text: '70' })).toEqual([
    {
      path: 'sections/s1/length',
      message:
        'Length of section is "70" (70 m); it takes a length from 0 m to 10 m, as { si, text }. Check the unit and the digits',
    },
  ]);
});

describe('a value that does not fit its field', () => {
  const cases: [Path, unknown][] = [
    [['about', '-', 'title'], 'x'.repeat(201)],
    [['about', '-', 'title'], 'half of a pair: \ud83c'],
    [['about', '-', 'title'], 'NUL \0'],
    [['about', '-', 'title'], 7],
    [['about', '-', 'rodKind'], 'sea'],
    [['about', '-', 'demo'], 'true'],
    [['about', '-', 'createdAt'], 'yesterday'],
    [['layout', '-', 'startCount'], 2.5],
    [['layout', '-', 'startCount'], 31],
    [length, 0.7],
    [length, { si: 0.7 }],
    [length, { si: Number.NaN, text: '' }],
    [length, { si: Number.POSITIVE_INFINITY, text: '' }],
    [length, { si: -0.1, text: '-10 cm' }],
    [length, { si: 0.7, text: '70 cm', unit: 'cm' }],
    [length, { si: 0.7, text: '7'.repeat(121) }],
    [['diameters', 'd1', 'section'], 'two words'],
    [['diameters', 'd1', 'section'], '-'],
    [['attachments', 'a1', 'content'], 'ABC'],
  ];
  test.each(cases)('%j: %j', (path, value) => {
    const findings = validateValue('build', path, value as FieldValue);
    expect(findings).toHaveLength(1);
    expect(findings[0].path).toBe(path.join('/'));
  });
});

describe('a path that does not exist', () => {
  test.each([
    [['rod', '-', 'title'], /no collection "rod"/],
    [['__proto__', '-', 'title'], /no collection/],
    [['sections', 's1', 'constructor'], /no field "constructor"/],
    [['sections', 's1', 'weight'], /no field "weight"/],
    [['sections', '-', 'length'], /no row id/],
    [['sections', 'a/b', 'length'], /no row id/],
    [['about', 'x', 'title'], /one row, named "-"/],
  ] as [Path, RegExp][])('%j', (path, message) => {
    expect(validateValue('build', path, null)[0].message).toMatch(message);
  });
});

describe('an operation that is none', () => {
  test.each([
    ['nothing', undefined],
    ['a list', []],
    ['a path of four', operation({ path: ['a', 'b', 'c', 'd'] as unknown as Path })],
    ['a field too many', { ...(operation({}) as object), extra: 1 }],
    ['a clock of 0', operation({ clock: 0, id: 'd1-a.0.0' })],
    ['a clock past counting', operation({ clock: 2 ** 53 - 1, id: `d1-a.${2 ** 53 - 1}.0` })],
    ['an id of another device', operation({ id: 'd2-a.3.0' })],
    ['an id of another clock', operation({ id: 'd1-a.30.0' })],
    ['a device with a slash', operation({ device: 'd/1', id: 'd/1.3.0' })],
    ['a local time', operation({ at: '2026-03-01T09:00:00+01:00' })],
    ['a nested value', operation({ value: { si: { si: 1 }, text: '' } as unknown as FieldValue })],
  ])('%s', (_, candidate) => {
    const findings = validateOperation('build', candidate);
    expect(findings.length).toBeGreaterThan(0);
    for (const { message } of findings) expect(message.length).toBeGreaterThan(20);
  });

  test('an operation that is one', () => {
    expect(validateOperation('build', operation({}))).toEqual([]);
    expect(validateOperation('shop', operation({}))[0].message).toMatch(/no collection "sections"/);
  });
});
