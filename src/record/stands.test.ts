/** Pictures of one stand in a record; the curves are invented arcs. */
import { expect, test } from 'vitest';
import { benchFit, inRecord } from '../engine/stiffness/from-bench.ts';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import { curveText } from './load-curve.ts';
import type { Change } from './operation.ts';
import { readBuild } from './read-build.ts';
import { readLoadTests, readPhotos, readStands } from './read-load-tests.ts';
import type { FieldValue } from './schema.ts';

const by = { device: 'd-1', gesture: 'g', at: '2026-03-01T09:00:00Z' };
const metres = (si: number) => ({ si, text: `${si} m` });
const row = (collection: string, id: string, fields: Record<string, FieldValue>): Change[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));

/** From the clamp to the left, bent down. */
const arc = (radiusM: number) =>
  Array.from({ length: 41 }, (_, i) => {
    const turn = (2.3 * i) / 40 / radiusM;
    const [xM, yM] = [-radiusM * Math.sin(turn), -radiusM * (1 - Math.cos(turn))];
    return { xM, yM, sigmaM: 0.001, px: [2000 + 500 * xM, 900 - 500 * yM] as [number, number] };
  });

const picture = (id: string, kg: number, radiusM: number, fields: Record<string, FieldValue>): Change[] => [
  ...row('loadTests', id, { order: kg, madeAt: by.at, hung: { si: kg, text: `${kg} kg` }, ...fields }),
  ...row('loadPhotos', `p-${id}`, { order: 0, test: id, widthPx: 4000, heightPx: 3000 }),
  ...row('traces', `p-${id}`, { photo: `p-${id}`, curve: curveText(arc(radiusM)) }),
];
const blank: Change[] = [
  ...row('sections', 's', { order: 0, length: metres(2.5), mass: { si: 0.05, text: '50 g' } }),
  ...row('diameters', 'd0', { section: 's', fromOwnTip: metres(0), outside: metres(0.002) }),
  ...row('diameters', 'd1', { section: 's', fromOwnTip: metres(2.5), outside: metres(0.01) }),
  ...row('setups', 'tape', { order: 0, kind: 'clamp', clampFromTip: metres(2.35) }),
  ...row('tests', 't', { order: 0, setup: 'tape', hung: { si: 0.05, text: '50 g' } }),
  ...row('readings', 'r', { order: 0, test: 't', fromTip: metres(0), drop: metres(0.4) }),
];
const stand: Change[] = [
  ...row('stands', 'w', { order: 0, madeAt: by.at, heldFromTip: metres(2.3), standOff: metres(0.08) }),
  ...picture('a', 0, 40, { stand: 'w' }),
  ...picture('b', 0.1, 4, { stand: 'w' }),
  ...picture('c', 0.2, 2, { stand: 'w', heldFromTip: metres(1), leftOut: true }),
];

/** Curves that count as read from the pictures as they are. */
function stateOf(changes: Change[]) {
  const empty = emptyDocument('b', 'build');
  const state = (all: Change[]) => applyOperations(empty, makeOperations(empty, all, by));
  const made = readPhotos(state(changes)).flatMap(({ id, madeFrom }) => row('traces', id, { madeFrom }));
  return state([...changes, ...made]);
}
const requestOf = (changes: Change[]) => {
  const { bench } = readBuild(stateOf(changes));
  if (!bench) throw new Error('no bench');
  return benchFit(bench);
};

test('pictures of a stand are asked as the door asks: one name, one hold, with their pixels', () => {
  const { request, rows } = requestOf([...blank, ...stand]);
  const curves = request.setups.flatMap((setup) => (setup.kind === 'curve' ? [setup] : []));
  expect(curves.map(({ shared, clampFromTipM }) => [shared, clampFromTipM])).toEqual(
    [0, 1, 2].map(() => ['w', 2.3]),
  );
  expect(curves.map(({ nominalAngleRad }) => nominalAngleRad)).toEqual([0, 0, 0]);
  const [, loaded] = curves;
  expect(loaded.tests[0].hung).toEqual([{ fromTipM: 0, massKg: 0.1 }]);
  expect(loaded.tests[0].points[0]).toEqual({ xM: 0, yM: 0, sigmaM: 0.001, px: [2000, 900] });
  expect(loaded.tests[0]).not.toHaveProperty('driftSigmaM');
  expect(rows.map(({ setupId }) => setupId)).toEqual(['tape', 'a', 'b', 'c']);
});

test('without a stated hold all take the same one, by the middle of their lengths', () => {
  const isHold = ({ path: [collection, , field] }: Change) =>
    collection === 'stands' && field === 'heldFromTip';
  const { request } = requestOf([...blank, ...stand.filter((one) => !isHold(one))]);
  const holds = request.setups.flatMap((setup) => (setup.kind === 'curve' ? [setup.clampFromTipM] : []));
  expect(new Set(holds).size).toBe(1);
  expect(holds[0]).toBeCloseTo(2.3, 3);
});

test('what is odd about a picture names it as it was taken, whatever was read by tape before', () => {
  const fit = requestOf([...blank, ...stand]);
  const odd = {
    path: 'setups[2].tests[0]',
    code: 'stand/clamp-slipped',
    values: { picture: 3, turnRad: 0.02 },
  };
  expect(inRecord(fit, odd)).toEqual({
    path: 'loadTests/b/hung',
    code: 'stand/clamp-slipped',
    values: { picture: 2, turnRad: 0.02 },
  });
});

test('they are no load tests, lend their stand’s distance from the marks, and go with it', () => {
  const state = stateOf([...blank, ...stand, ...picture('own', 0.3, 3, { rod: 'bare' })]);
  expect(readLoadTests(state).map(({ id }) => id)).toEqual(['own']);
  const [{ tests }] = readStands(state);
  expect(tests.map(({ id, rod, photos }) => [id, rod, photos[0].standOffM])).toEqual(
    ['a', 'b', 'c'].map((id) => [id, 'bare', 0.08]),
  );
  const gone = stateOf([...blank, ...stand, ...row('stands', 'w', { gone: true })]);
  expect(readPhotos(gone)).toEqual([]);
  expect(readBuild(gone).bench?.curves).toEqual([]);
});
