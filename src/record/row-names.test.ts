import { expect, test } from 'vitest';
import { nameOfRow, sectionName, setupName } from './row-names.ts';

const clampFromTip = { si: 0.6096, text: '24' };

test('what a record keeps as an id is called as earlier versions wrote it out', () => {
  expect(sectionName({ fields: { part: 'second' } }, 1)).toBe('second');
  expect(sectionName({ fields: { part: 'added' } }, 4)).toBe('new butt');
  expect(setupName({ fields: { place: 'tip' } }, 0)).toBe('Tip over a padded edge');
  expect(setupName({ fields: { place: 'quarter' } }, 3)).toBe('Clamp moved three quarters up');
  const far = { place: 'clamp-at-turned', clampFromTip: { si: 1.0414, text: '41 in' } };
  expect(setupName({ fields: far }, 4)).toBe('Clamp at 41 in, turned half over');
  const loadFromTip = { si: 0.75, text: '750 mm' };
  expect(setupName({ fields: { place: 'supports-at', loadFromTip } }, 4)).toBe('Two supports about 750 mm');
});

test('a bare number keeps the unit that it was typed in, whatever the shop reads today', () => {
  expect(setupName({ fields: { place: 'clamp-at', clampFromTip } }, 0)).toBe('Clamp at 24 in');
  const millimetres = { si: 0.61, text: '610' };
  expect(setupName({ fields: { place: 'clamp-at', clampFromTip: millimetres } }, 0)).toBe('Clamp at 610 mm');
});

test('the builder’s own name wins, and a name that an earlier version wrote stays', () => {
  expect(sectionName({ fields: { part: 'tip', name: 'top, repaired' } }, 0)).toBe('top, repaired');
  const kept = { name: 'Clamp at 41 in', clampFromTip };
  expect(setupName({ fields: kept }, 2)).toBe('Clamp at 41 in');
  expect(setupName({ fields: { place: 'half', name: ' ' } }, 2)).toBe('Clamp moved to half');
});

test('without either it is called by its number', () => {
  expect(sectionName({ fields: {} }, 2)).toBe('section 3');
  expect(setupName({ fields: { place: 'an id of a later version' } }, 0)).toBe('Set-up 1');
  expect(nameOfRow('walls', { fields: { order: 1 } })).toBe('Wall 2');
  expect(nameOfRow('printers', { fields: { order: 0 } })).toBe('Printer 1');
  expect(nameOfRow('printers', { fields: {} })).toBeUndefined();
});
