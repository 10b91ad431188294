import { expect, test } from 'vitest';
import { benchList, type StageFact, sumMinutes } from './bench-list.ts';

const facts = (done: string[], cure?: string): StageFact[] =>
  [
    { id: 'blank', name: 'Blank', after: [] },
    { id: 'handle', name: 'Handle', after: ['blank'] },
    { id: 'layout', name: 'Layout', after: ['blank'] },
    { id: 'coat', name: 'Second coat', after: ['layout', 'handle'], waitsFor: cure },
  ].map((fact) => ({ ...fact, done: done.includes(fact.id) }));
const statuses = (...given: Parameters<typeof facts>) =>
  benchList(facts(...given)).map(({ status }) => status);

test('exactly one stage is next, as long as one can be worked on', () => {
  expect(statuses([])).toEqual(['next', 'waits', 'waits', 'waits']);
  expect(statuses(['blank'])).toEqual(['done', 'next', 'ready', 'waits']);
  expect(statuses(['blank', 'layout'])).toEqual(['done', 'next', 'done', 'waits']);
});

test('a cure is waited for with its hour, and a stage names those before it', () => {
  const list = benchList(facts(['blank', 'handle', 'layout'], 'the first coat, until Tue 9:00'));
  expect(list[3]).toMatchObject({ status: 'waits', why: 'the first coat, until Tue 9:00' });
  expect(benchList(facts(['blank']))[3].why).toBe('after Layout, Handle');
});

test('a stage that is not in the list breaks an invariant', () => {
  expect(() => benchList([{ id: 'a', name: 'A', done: false, after: ['b'] }])).toThrow(/a comes after b/);
});

test('minutes add up by stage and in all', () => {
  const { byStage, totalMinutes } = sumMinutes([
    { stage: 'wraps', minutes: 15 },
    { stage: 'wraps', minutes: 30 },
    { stage: 'handle', minutes: 15 },
  ]);
  expect([byStage.get('wraps'), byStage.get('handle'), totalMinutes]).toEqual([45, 15, 60]);
});
