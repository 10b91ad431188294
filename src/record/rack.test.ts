import { describe, expect, it, test } from 'vitest';
import { inWords } from '../../test/support/in-words.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { diameterProfile } from '../engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../engine/bench/estimate.ts';
import { finishedRod } from '../engine/flow/finished-rod.ts';
import { layoutQuestion } from '../engine/flow/layout-question.ts';
import { frequency } from '../engine/frequency/frequency.ts';
import { makeLadder, readLadder } from '../engine/layout/ladder.ts';
import { applyOperations, emptyDocument, makeOperations, rows } from './document.ts';
import type { Change, DocumentState } from './operation.ts';
import { changedInRack, originOf, rackShortages, takeFromRack, takeKeeper } from './rack.ts';
import { readBuild } from './read-build.ts';
import type { DocumentKind, FieldValue } from './schema.ts';

const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const grams = (value: number) => ({ si: value / 1000, text: `${value} g` });
const put = (collection: string, row: string, fields: Record<string, FieldValue>): Change[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field], value }));
const after = (kind: DocumentKind, ...gestures: Change[][]): DocumentState =>
  gestures.reduce(
    (state, changes, index) =>
      applyOperations(
        state,
        makeOperations(state, changes, { device: 'd-1', gesture: `g${index}`, at: '2026-01-01T00:00:00Z' }),
      ),
    emptyDocument(kind, kind),
  );

/** An invented drawer: one measured, one as its packet says, one of which only the size is known. */
const drawer = after('shop', [
  ...put('rack', 'a', {
    order: 0,
    kind: 'snake',
    size: '1',
    ringHeight: mm(2.4),
    mass: grams(0.1),
    onHand: 2,
  }),
  ...put('rack', 'b', { order: 1, kind: 'ringed', size: '6 mm', opening: mm(4.1), numbersAre: 'stated' }),
  ...put('rack', 'c', { order: 2, kind: 'snake', size: '4' }),
  ...put('rack', 'k', { order: 3, kind: 'keeper', foot: mm(20), feet: 1, mass: grams(0.1) }),
]);
const [snake, ring, bare, keeper] = rows(drawer, 'rack');

const sections: Change[] = [
  ...put('sections', 's', { order: 1, length: mm(1400), mass: grams(12), joint: 'sleeve', overlap: mm(50) }),
  ...put('sections', 't', { order: 2, length: mm(1400), mass: grams(28) }),
  ...put('diameters', '1', { section: 's', fromOwnTip: mm(0), outside: mm(1.7) }),
  ...put('diameters', '2', { section: 't', fromOwnTip: mm(1400), outside: mm(9.8) }),
];
const stations = [110, 250, 430, 660, 950, 1300, 1980];
const placed = stations.flatMap((at, index) =>
  put('guides', `g${index}`, { order: index, kind: index === 6 ? 'stripping' : 'snake', station: mm(at) }),
);
const built = (...more: Change[][]) => after('build', sections, placed, ...more);

describe('a guide taken from the rack', () => {
  it('carries its own numbers into the build and says of each where it comes from', () => {
    const state = built(takeFromRack(snake, 'g0'), takeFromRack(ring, 'g1'), takeFromRack(bare, 'g2'));
    const [first, second, third] = rows(state, 'guides');
    expect(originOf(first, 'ringHeight', snake)).toBe('measured');
    expect(originOf(first, 'opening', snake)).toBe('typical');
    expect(originOf(second, 'opening', ring)).toBe('stated');
    const typed = built(takeFromRack(snake, 'g0'), put('guides', 'g0', { mass: grams(0.13) }));
    expect(originOf(rows(typed, 'guides')[0], 'mass', snake)).toBe('typed here');
    expect(originOf(third, 'mass', bare)).toBe('typical');
    const { choices } = readBuild(state);
    expect(choices?.guides.slice(0, 3)).toMatchObject([
      { kind: 'snake', size: '1', ringHeightM: 0.0024, massKg: 0.0001 },
      { kind: 'ringed', size: '6 mm' },
      // what is typical follows the size that was taken, not the place on the rod
      { kind: 'snake', size: '4', ringHeightM: 0.0033, massKg: 0.000205 },
    ]);
  });
  it('keeps its numbers when the rack is measured again, and says what the rack says by now', () => {
    const state = built(takeFromRack(snake, 'g0'));
    const again = rows(
      applyOperations(
        drawer,
        makeOperations(drawer, put('rack', 'a', { ringHeight: mm(2.6) }), {
          device: 'd-1',
          gesture: 'm',
          at: '2026-01-02T00:00:00Z',
        }),
      ),
      'rack',
    )[0];
    expect(changedInRack(rows(state, 'guides')[0], snake)).toEqual([]);
    expect(changedInRack(rows(state, 'guides')[0], again)).toEqual(['ringHeight']);
    expect(readBuild(state).choices?.guides[0].ringHeightM).toBe(0.0024);
  });
  it('more than lie in the drawer are counted; a drawer without a count is not judged', () => {
    const state = built(...['g0', 'g1', 'g2'].map((id) => takeFromRack(snake, id)), takeFromRack(bare, 'g3'));
    const short = rackShortages(rows(state, 'guides'), rows(drawer, 'rack'));
    expect(short.map(({ rack, wanted, onHand }) => [rack.id, wanted, onHand])).toEqual([['a', 3, 2]]);
  });
  it('a keeper becomes part of the handle', () => {
    const state = built(takeKeeper(keeper), put('handle', '-', { keeperAhead: mm(25) }));
    expect(rows(state, 'guides')).toHaveLength(7);
    expect(state.cells.get('handle/-/keeperLength')?.value).toEqual(mm(20));
  });
});

function worked(state: DocumentState) {
  const { bench, choices } = readBuild(state);
  if (!bench || !choices) throw new Error('the invented build cannot be read');
  const blank = assembleBlank(bench.sections);
  const diameters = diameterProfile(bench.sections, blank);
  const tables = estimateFromDiameters(diameters, bench.material);
  const parts = { bench, choices, blank, diameters };
  const { request, rod } = layoutQuestion({ ...parts, tables });
  const marks = stations.map((at) => at / 1000);
  const reading = readLadder(makeLadder(request), marks);
  const { loose } = finishedRod({ ...parts, rod }, marks);
  const swings = frequency({ rod: loose.rod, masses: loose.masses, modes: 1 });
  if (swings.status === 'refused') throw new Error(inWords(swings.findings[0]));
  return { reading, hz: swings.hz[0] };
}

test('a heavier guide lowers the frequency and the tip, and a taller ring bends the line elsewhere', () => {
  const plain = worked(built());
  const heavy = worked(built(put('guides', 'g0', { mass: grams(3) })));
  const tall = worked(built(put('guides', 'g3', { ringHeight: mm(12) })));
  expect(heavy.hz).toBeLessThan(plain.hz * 0.99);
  const tipY = ({ reading }: ReturnType<typeof worked>) => {
    const { fromTipM, yM } = reading.loads[0];
    return yM[fromTipM.indexOf(Math.min(...fromTipM))];
  };
  expect(tipY(heavy)).toBeLessThan(tipY(plain) - 1e-4);
  // The tip-top's ring comes first: guide 4 is the fifth.
  const ring = ({ reading }: ReturnType<typeof worked>) => reading.loads.at(-1)?.rings[4];
  const [low, high] = [ring(plain), ring(tall)];
  const movedM = Math.hypot((high?.xM ?? 0) - (low?.xM ?? 0), (high?.yM ?? 0) - (low?.yM ?? 0));
  expect(movedM).toBeGreaterThan(0.008);
  expect(movedM).toBeLessThan(0.0105);
  expect(Math.abs((high?.lineAngleRad ?? 0) - (low?.lineAngleRad ?? 0))).toBeGreaterThan(0.03);
  expect(tall.hz).toBeCloseTo(plain.hz, 6);
});
