import { describe, expect, it } from 'vitest';
import { findField, validateValue } from '../../record/validate.ts';
import { readTyped } from './read-typed.ts';

const kindOf = (path: [string, string, string]) => {
  const kind = findField('build', path);
  if (typeof kind === 'string' || kind.kind !== 'quantity') throw new Error('no quantity');
  return kind;
};
const drop = kindOf(['readings', 'r', 'drop']);
const mass = kindOf(['sections', 's', 'mass']);

describe('what is typed into a quantity field', () => {
  it('is kept as SI value and text as typed', () => {
    const typed = readTyped(' 4 1/2 in ', drop, 'mm');
    expect(typed).toMatchObject({ ok: true, value: { text: '4 1/2 in' }, understood: '4 1/2 in = 114.3 mm' });
    expect(typed.ok && typed.value?.si).toBeCloseTo(0.1143, 12);
  });
  it('nothing typed empties the field', () => {
    expect(readTyped('  ', drop, 'inch')).toMatchObject({ ok: true, value: null });
  });
  it('what is accepted the record takes, what the record would refuse is refused in the shop’s units', () => {
    for (const text of [
      '9.9 m',
      '-9 m',
      '10 m',
      '10.1 m',
      '33 ft',
      '0',
      '394 in',
      '51 kg',
      '49 kg',
      '2 oz',
    ]) {
      for (const [kind, path] of [
        [drop, ['readings', 'r', 'drop']],
        [mass, ['sections', 's', 'mass']],
      ] as const) {
        const typed = readTyped(text, kind, 'inch');
        if (typed.ok) expect(validateValue('build', path, typed.value)).toEqual([]);
        else expect(typed.trouble).toContain(text);
      }
    }
    expect(readTyped('60 kg', mass, 'inch')).toMatchObject({
      trouble: expect.stringMatching(/outside .* 50000 g/),
    });
  });
  it('a unit of another kind is named', () => {
    expect(readTyped('12 in', mass, 'inch')).toMatchObject({
      ok: false,
      trouble: expect.stringMatching(/unit of length/),
    });
  });
});
