import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inWords } from '../../test/support/in-words.ts';
import type { ClampSetup } from '../engine/bench/bench.ts';
import { rodKinds } from '../engine/kinds/rod-kinds.ts';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Change, DocumentState } from './operation.ts';
import { readBuild } from './read-build.ts';
import { buildSchema, type FieldKind, type FieldValue } from './schema.ts';

type Fields = Record<string, FieldValue>;
const m = (si: number) => ({ si, text: `${si * 1000} mm` });
const kg = (si: number) => ({ si, text: `${si * 1000} g` });

/** `collection/row` to its fields. */
function build(rows: Record<string, Fields>): DocumentState {
  const changes = Object.entries(rows).flatMap(([at, fields]) => {
    const [collection, row] = at.split('/');
    return Object.entries(fields).map(
      ([field, value]): Change => ({ path: [collection, row, field], value }),
    );
  });
  const empty = emptyDocument('b', 'build');
  return applyOperations(
    empty,
    makeOperations(empty, changes, { device: 'd', gesture: 'g', at: '2026-01-01T00:00:00Z' }),
  );
}
const twoSections: Record<string, Fields> = {
  'sections/a': { order: 1, length: m(1.4), mass: kg(0.012), joint: 'sleeve', overlap: m(0.05) },
  'sections/b': { order: 2, length: m(1.4), mass: kg(0.028) },
  'diameters/1': { section: 'a', fromOwnTip: m(0), outside: m(0.0016) },
  'diameters/2': { section: 'b', fromOwnTip: m(1.4), outside: m(0.0098) },
};
const oneReading: Record<string, Fields> = {
  'setups/s': { clampFromTip: m(2.5) },
  'tests/t': { setup: 's', hung: kg(0.1) },
  'readings/r': { test: 't', fromTip: m(0), drop: m(0.9) },
};
const paths = (state: DocumentState) => readBuild(state).findings.map(({ path }) => path);

describe('a build as the engine takes it', () => {
  it('reads sections, set-ups and readings, and names every default it filled in', () => {
    const { bench, choices, findings, assumed } = readBuild(build({ ...twoSections, ...oneReading }));
    expect(findings).toEqual([]);
    expect(bench?.sections.map(({ lengthM }) => lengthM)).toEqual([1.4, 1.4]);
    expect((bench?.setups[0] as ClampSetup | undefined)?.tests[0]).toMatchObject({
      hungKg: 0.1,
      readings: [{ fromTipM: 0, dropM: 0.9 }],
    });
    expect(choices?.guides).toHaveLength(10);
    expect(assumed.map(({ path }) => path)).toEqual([
      'handle/-/gripFront',
      'handle/-/reelFromButt',
      'handle/-/reelOffset',
      'layout/-/startFirst',
      'layout/-/startStripping',
      'guides',
    ]);
  });

  it('an empty build asks for sections and nothing else', () => {
    expect(paths(build({}))).toEqual(['sections']);
  });
  it('rows still to be filled are no readings and no findings; rows set aside are left out', () => {
    const open = {
      ...twoSections,
      ...oneReading,
      'readings/x': { test: 't', fromTip: m(0.3) },
      'readings/y': { test: 't', fromTip: m(0.5), drop: m(0.7), setAside: true },
    };
    const { bench, findings } = readBuild(build(open));
    expect(findings).toEqual([]);
    expect((bench?.setups[0] as ClampSetup | undefined)?.tests[0].readings.map(({ id }) => id)).toEqual([
      'r',
    ]);
  });

  it.each<[string, Record<string, Fields>, string]>([
    ['a section without length', { 'sections/a': { order: 1 } }, 'sections/a/length'],
    [
      'a sleeve without overlap',
      { 'sections/a': { ...twoSections['sections/a'], overlap: null } },
      'sections/a/overlap',
    ],
    ['a joint left out', { 'sections/a': { order: 1, length: m(1.4) } }, 'sections/a/joint'],
    [
      'a diameter without its place',
      { 'diameters/1': { section: 'a', outside: m(0.0016) } },
      'diameters/1/fromOwnTip',
    ],
    [
      'a drop without its station',
      { ...oneReading, 'readings/r': { test: 't', drop: m(0.9) } },
      'readings/r/fromTip',
    ],
    ['drops without a clamp', { ...oneReading, 'setups/s': { name: 'level' } }, 'setups/s/clampFromTip'],
    [
      'a span without its load',
      {
        'setups/s': { kind: 'span', supportTipSide: m(0.1), supportButtSide: m(0.6) },
        'tests/t': { setup: 's', hung: kg(1), sag: m(0.01) },
      },
      'setups/s/loadFromTip',
    ],
    ['nothing weighed', { 'sections/a': { ...twoSections['sections/a'], mass: null } }, 'blank/-/mass'],
    ['a chart left empty', { 'layout/-': { startKind: 'chart' } }, 'layout/-/startText'],
    [
      'a chart that cannot be read',
      { 'layout/-': { startKind: 'chart', startText: '4, nine' } },
      'layout/-/startText',
    ],
    [
      'a chart of another count',
      { 'layout/-': { startKind: 'chart', startText: '4 9 15' }, 'guides/g': { kind: 'snake' } },
      'layout/-/startText',
    ],
  ])('%s is named at its field', (_, change, path) => {
    expect(paths(build({ ...twoSections, ...change }))).toContain(path);
  });

  it('guides keep their own sizes; what they leave open is filled in', () => {
    const rows = {
      ...twoSections,
      'guides/t': { kind: 'tip-top', order: 0, mass: kg(0.0003) },
      'guides/g': { kind: 'single-foot', order: 1, ringHeight: m(0.007), station: m(0.11), pinned: true },
      'guides/h': { kind: 'stripping', order: 2 },
    };
    const { choices } = readBuild(build(rows));
    expect(choices?.tipTop.massKg).toBe(0.0003);
    expect(choices?.guides[0]).toMatchObject({
      kind: 'single-foot',
      ringHeightM: 0.007,
      stationM: 0.11,
      pinned: true,
    });
    expect(choices?.guides[0].massKg).toBeGreaterThan(0);
    expect(choices?.start).toMatchObject({ kind: 'rule', count: 2 });
  });

  it('a size that its kind does not know is asked for, never taken from its place in the set', () => {
    const guides = (fields: object) =>
      readBuild(
        build({
          ...twoSections,
          'guides/g': { kind: 'ringed', order: 1, ...fields },
          'guides/h': { kind: 'stripping', size: '12', order: 2 },
        }),
      );
    const asked = ({ findings }: ReturnType<typeof guides>) =>
      findings.filter(({ path }) => path === 'guides/g/size').map(({ severity }) => severity);
    expect(asked(guides({ size: '25' }))).toEqual([]);
    expect(guides({ size: '25' }).choices?.guides[0].ringHeightM).toBeGreaterThan(0.015);
    expect(asked(guides({ size: 'wide' }))).toEqual(['stop']);
    expect(asked(guides({ size: 'wide', ringHeight: m(0.0125) }))).toEqual(['doubt']);
    // its ring is as high as a 16's, so its mass is a 16's
    expect(guides({ size: 'wide', ringHeight: m(0.0125) }).choices?.guides[0].massKg).toBeCloseTo(0.0023, 9);
    const measured = { size: 'wide', ringHeight: m(0.0125), foot: m(0.04), mass: kg(0.002) };
    expect(asked(guides(measured))).toEqual([]);
    const { findings } = guides({ size: 'wide' });
    expect(inWords(findings.find(({ path }) => path === 'guides/g/size'))).toMatch(/“wide”.*such as 8 mm/);
  });

  it('a kind changed without its size is asked about; a guide of the common kind keeps the common size', () => {
    const paths = (kind: string) =>
      readBuild(
        build({ ...twoSections, 'guides/g': { kind, order: 1 }, 'guides/h': { order: 2 } }),
      ).findings.map(({ path }) => path);
    expect(paths('roller')).toContain('guides/g/size');
    expect(paths('snake')).not.toContain('guides/g/size');
  });

  it('each kind of rod has its own guides, side and handle', () => {
    const of = (rodKind: string) => readBuild(build({ ...twoSections, 'about/-': { rodKind } }));
    expect(of('casting').choices?.side).toBe('over');
    expect(of('surf').choices?.guides.at(-1)?.kind).toBe('ringed-high');
    expect(of('boat').bench?.handle.reelOffsetM).toBe(0.05);
    expect(of('fly').choices?.guides.at(-1)?.kind).toBe('stripping');
  });

  it('of an empty record nothing looks odd, whatever the kind of rod; a hand measured off its grip does', () => {
    for (const { id: rodKind } of rodKinds) {
      const { findings } = readBuild(build({ 'about/-': { rodKind } }));
      expect(findings.map(({ path }) => path)).toEqual(['sections']);
    }
    const off = {
      ...twoSections,
      'about/-': { rodKind: 'surf' },
      'handle/-': { upperHand: { si: 2, text: '2 m' } },
    };
    expect(readBuild(build(off)).findings.map(({ code }) => code)).toContain('record/hand-off-grip');
  });

  it('never throws, whatever a valid record holds', () => {
    const collections = Object.entries(buildSchema);
    const change = fc.constantFrom(...collections).chain(([collection, { fields, single }]) =>
      fc.constantFrom(...Object.entries(fields)).chain(([field, kind]) =>
        fc.record({
          path: fc.tuple(
            fc.constant(collection),
            fc.constantFrom(...(single ? ['-'] : ['a', 'b', 'c'])),
            fc.constant(field),
          ),
          value: anyValue(kind),
        }),
      ),
    );
    let whole = 0;
    fc.assert(
      fc.property(fc.array(change, { maxLength: 25 }), (changes) => {
        const start = build({ ...twoSections, ...oneReading });
        const by = { device: 'd', gesture: 'g', at: '2026-01-01T00:00:00Z' };
        const { findings, bench } = readBuild(applyOperations(start, makeOperations(start, changes, by)));
        if (bench) whole++;
        expect(bench !== undefined || findings.length > 0).toBe(true);
        for (const finding of findings) expect(inWords(finding)).not.toMatch(/NaN|undefined|Infinity/);
      }),
      { seed: 4, numRuns: 400 },
    );
    expect(whole).toBeGreaterThan(40);
  });
});

/** Any value that may stand in a field, rows pointing to the few there are. */
function anyValue(kind: FieldKind): fc.Arbitrary<FieldValue> {
  if (kind.kind === 'quantity')
    return fc.double({ min: kind.min, max: kind.max, noNaN: true }).map((si) => ({ si, text: 't' }));
  if (kind.kind === 'number')
    return fc.integer({ min: Math.ceil(Math.max(kind.min, -99)), max: Math.floor(Math.min(kind.max, 99)) });
  if (kind.kind === 'choice') return fc.constantFrom(...kind.of);
  if (kind.kind === 'flag') return fc.constant(false);
  if (kind.kind === 'row') return fc.constantFrom('a', 'b', 'c');
  return fc.constantFrom('4 9 15', '5', '');
}
