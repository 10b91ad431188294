import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from '../record/document.ts';
import type { Change } from '../record/operation.ts';
import { deedText, pastDeedText } from './deeds.ts';
import { changeWords, type Teller, whoseWords } from './history.ts';
import { shopWriter } from './writer.ts';

const changes: Change[] = [
  { path: ['sections', 'a', 'name'], value: 'tip' },
  { path: ['diameters', 'd', 'section'], value: 'a' },
  { path: ['diameters', 'd', 'fromOwnTip'], value: { si: 0.0254, text: '1' } },
  { path: ['guides', 'f', 'order'], value: 1 },
  { path: ['guides', 'old', 'order'], value: 2 },
  { path: ['guides', 'old', 'gone'], value: true },
  { path: ['guides', 'g', 'order'], value: 3 },
  { path: ['guides', 'g', 'kind'], value: 'snake' },
  { path: ['guides', 'g', 'size'], value: '3' },
];
const empty = emptyDocument('b', 'build');
const by = { device: 'd-1', gesture: 'g.1', at: '2026-03-01T09:00:00Z' };
const teller: Teller = {
  document: applyOperations(empty, makeOperations(empty, changes, by)),
  units: { system: 'inch' },
  writer: shopWriter({ system: 'inch' }),
  currency: { code: 'EUR', digits: 2 },
};

test('a change is told by what it is of and what the field is called, quantities with their unit', () => {
  const quantity = { si: 0.1143, text: '4 1/2' };
  expect(changeWords(['sections', 'a', 'overlap'], null, quantity, teller)).toBe(
    'Section tip, overlap when seated: empty → 4 1/2 in',
  );
  expect(changeWords(['guides', 'g', 'station'], quantity, { si: 0.12, text: '120 mm' }, teller)).toBe(
    'Guide 2 snake 3, mark: 4 1/2 in → 120 mm',
  );
  expect(changeWords(['guides', 'old', 'gone'], null, true, teller)).toBe('Guide 2: removed');
  expect(changeWords(['diameters', 'd', 'section'], null, 'a', teller)).toBe(
    'Diameter at 1 in, section: empty → tip',
  );
  expect(changeWords(['blank', '-', 'strainStopPercent'], null, 0.4, teller)).toBe(
    'Blank, stop at: empty → 0.4 %',
  );
  expect(changeWords(['sections', 'a', 'gone'], null, true, teller)).toBe('Section tip: removed');
});

test('what is kept as data is told as figures, a note that begins with a bracket as it is', () => {
  const path = (field: string) => ['loadTests', 't', field] as const;
  expect(changeWords(path('report'), null, '{"rod":"taped"}', teller)).toBe(
    'Load test, what was found: empty → figures',
  );
  expect(changeWords(path('note'), null, '[windy]', teller)).toBe('Load test, note: empty → [windy]');
});

test('money is told as it is written, not in its smallest unit', () => {
  expect(changeWords(['quoteLines', 'q', 'unitPrice'], null, 123_450, teller)).toBe(
    'Line of the quote, price of one: empty → EUR\u00a01,234.50',
  );
  const yen = { ...teller, currency: { code: 'JPY', digits: 0 } };
  expect(changeWords(['quote', '-', 'hourlyRate'], 4200, 4500, yen)).toBe(
    'Quote, an hour of work: JPY\u00a04,200 → JPY\u00a04,500',
  );
});

test('a number typed bare in a millimetre shop keeps its meaning in an inch shop', () => {
  const quantity = { si: 0.114, text: '114' };
  expect(changeWords(['handle', '-', 'gripFront'], null, quantity, teller)).toBe(
    'Handle, butt end to the front of the grip: empty → 114 mm',
  );
});

test('temperatures and choices are told as the shop has them', () => {
  expect(changeWords(['finish', '-', 'roomC'], 20, 200 / 9, teller)).toBe('Finish, room: 68 °F → 72 °F');
  expect(changeWords(['setups', 's', 'edge'], null, 'axis', teller)).toBe(
    'Set-up, line of the blank that was read: empty → middle',
  );
});

test('a gesture is an id of the record, told by what was done; a field by its name', () => {
  expect(pastDeedText('moveGuide:7.k3p9x2ab', 'build')).toBe('Move guide 7');
  expect(pastDeedText('undo:17:moveGuide:7.k3p9x2ab', 'build')).toBe('Undid: move guide 7');
  expect(pastDeedText('set:handle:gripLength.k3p9x2ab', 'build')).toBe('Grip’s length');
  expect(deedText('set:about:title.k3p9x2ab', 'ticket')).toBe('the rod');
  expect(pastDeedText('create', 'build')).toBe('Begin');
});

test('gestures that earlier versions wrote in English stay readable as they are', () => {
  expect(pastDeedText('move guide.k3p9x2ab', 'build')).toBe('Move guide');
  expect(pastDeedText('undo:17:move guide.k3p9x2ab', 'build')).toBe('Undid: move guide');
  expect(pastDeedText('Grip s length.k3p9x2ab', 'build')).toBe('Grip s length');
  expect(pastDeedText('constructor.k3p9x2ab', 'build')).toBe('Constructor');
});

test('who changed it: another session of this browser is this device still', () => {
  expect(whoseWords('abcd-s1', 'abcd-s2')).toBe('this device');
  expect(whoseWords('server-x', 'abcd-s2')).toBe('the shop’s computer');
  expect(whoseWords('wxyz12-s1', 'abcd-s2')).toBe('device wxyz');
});
