import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Change } from './operation.ts';
import { readDelivered } from './read-delivered.ts';

test('what leaves with a rod is its parts and its customer: no price, hour, source, lot or note', () => {
  const empty = emptyDocument('b', 'build');
  const changes: Change[] = [
    { path: ['about', '-', 'customer'], value: 'An invented angler' },
    { path: ['about', '-', 'note'], value: 'secret note' },
    { path: ['parts', 'p1', 'what'], value: 'snake guide 1/0' },
    { path: ['parts', 'p1', 'count'], value: 4 },
    { path: ['parts', 'p1', 'note'], value: 'secret of the part' },
    { path: ['parts', 'p1', 'lot'], value: 'secret lot' },
    { path: ['parts', 'p2', 'what'], value: 'put away' },
    { path: ['parts', 'p2', 'gone'], value: true },
    { path: ['quote', '-', 'note'], value: 'secret of the quote' },
    { path: ['quote', '-', 'hourlyRate'], value: 4567 },
    { path: ['delivery', '-', 'note'], value: 'secret of the delivery' },
  ];
  const by = { device: 'd', gesture: 'g', at: '2026-03-01T09:00:00Z' };
  const said = readDelivered(applyOperations(empty, makeOperations(empty, changes, by)));
  expect(said.madeOf).toEqual(['4 × snake guide 1/0']);
  expect(said.customer).toBe('An invented angler');
  expect(JSON.stringify(said)).not.toMatch(/secret|4567|put away/);
});
