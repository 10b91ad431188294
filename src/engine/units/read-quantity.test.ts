import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { formatInches } from './format-inches.ts';
import { formatDegrees, formatGrams, formatLength, formatOunces } from './format-quantity.ts';
import type { ReadOptions } from './quantity-parts.ts';
import { readQuantity } from './read-quantity.ts';
import type { Dimension, UnitSystem } from './unit-table.ts';

const read = (text: string, dimension: Dimension = 'length', system: UnitSystem = 'inch') =>
  readQuantity(text, { dimension, system, path: 'a/b/c' });

function siOf(text: string, dimension?: Dimension, system?: UnitSystem): number {
  const result = read(text, dimension, system);
  if (!result.ok) throw new Error(inWords(result.finding));
  return result.si;
}
function refused(text: string, dimension?: Dimension, system?: UnitSystem) {
  const result = read(text, dimension, system);
  if (result.ok) throw new Error(`"${text}" was read as ${result.understood}`);
  expect(result.finding.path).toBe('a/b/c');
  return result.finding;
}

describe('what people write', () => {
  it.each([
    ['4 1/2 in', 0.1143],
    ['4-1/2"', 0.1143],
    ['4½″', 0.1143],
    ['4½ in', 0.1143],
    ['2\' 3"', 0.6858],
    ['2′3″', 0.6858],
    ["2' 3", 0.6858],
    [`4' 7 1/2"`, 1.4097],
    [`4' 7-1/2"`, 1.4097],
    [`4'-7 1/2"`, 1.4097],
    [`4''`, 0.1016],
    ['4 ft 7 1⁄2 in', 1.4097],
    ['4 ft, 7 in', 1.397],
    ['114 mm', 0.114],
    ['11.4 cm', 0.114],
    ['1.23m', 1.23],
    ['31,5 cm', 0.315],
    ['0,250 m', 0.25],
    ['3/64', 0.001190625],
    ['5.5/64 in', 0.0021828125],
    ['12 3/16', 0.3095625],
    ['12–3/16 inches', 0.3095625],
    ['.312"', 0.0079248],
    ['1 m 23 cm', 1.23],
    ['-3 mm', -0.003],
    ['１２ mm', 0.012],
  ])('length %s', (text, si) => expect(siOf(text)).toBe(si));

  it.each([
    ['2.5 oz', 0.0708738078125],
    ['1/4 oz', 0.00708738078125],
    ['72 g', 0.072],
    ['0.1 kg', 0.1],
    ['1 lb 3 oz', 0.538640939375],
    ['100 gr', 0.006479891],
    ['100 grains', 0.006479891],
    ['50', 0.05],
    ['350 mg', 0.00035],
  ])('mass %s', (text, si) => expect(siOf(text, 'mass')).toBe(si));

  it.each([
    ['12°', Math.PI / 15],
    ['45 deg', Math.PI / 4],
    ['45', Math.PI / 4],
    ['0.2 rad', 0.2],
    ['-12º', -Math.PI / 15],
    [`12° 30'`, (12.5 * Math.PI) / 180],
  ])('angle %s', (text, si) => expect(siOf(text, 'angle')).toBeCloseTo(si, 15));

  it.each([
    ['1 h 30 min', 5400],
    ['45', 2700],
    ['6 h', 21_600],
  ])('duration %s', (text, si) => expect(siOf(text, 'duration')).toBe(si));

  it('the shop decides a bare number, but a bare fraction of a length is inches', () => {
    expect(siOf('12', 'length', 'inch')).toBe(0.3048);
    expect(siOf('12', 'length', 'mm')).toBe(0.012);
    expect(siOf('3/64', 'length', 'mm')).toBe(0.001190625);
    expect(siOf('50', 'mass', 'inch')).toBe(siOf('50', 'mass', 'mm'));
  });
});

describe('what was understood', () => {
  const understood = (text: string, dimension?: Dimension, system?: UnitSystem) => {
    const result = read(text, dimension, system);
    return result.ok ? result.understood : inWords(result.finding);
  };
  it.each([
    ['4 1/2 in', 'length', 'inch', '4 1/2 in = 114.3 mm'],
    ['4½', 'length', 'inch', '4 1/2 in = 114.3 mm'],
    [`4'7`, 'length', 'inch', '4 ft 7 in = 1397 mm'],
    ['114 mm', 'length', 'inch', '114 mm = 4.488 in'],
    ['114', 'length', 'mm', '114 mm'],
    ['11,4 cm', 'length', 'mm', '11.4 cm = 114 mm'],
    ['3/64', 'length', 'mm', '3/64 in = 1.19 mm'],
    ['2.5 oz', 'mass', 'inch', '2.5 oz = 70.87 g'],
    ['72', 'mass', 'inch', '72 g'],
    ['100 gr', 'mass', 'mm', '100 grains = 6.48 g'],
    ['0.2 rad', 'angle', 'mm', '0.2 rad = 11.46°'],
    ['12', 'angle', 'mm', '12°'],
  ] as const)('%s (%s, %s shop) is echoed as %s', (text, dimension, system, echo) => {
    expect(understood(text, dimension, system)).toBe(echo);
  });
});

describe('what makes no sense is named with its remedy', () => {
  it.each([
    ['', { why: 'empty' }],
    ['about 4', { why: 'not-a-number', part: 'about 4' }],
    ['4 1/0', { why: 'zero-below', part: '1/0' }],
    ['4 9/8 in', { why: 'fraction-over-one', part: '9/8' }],
    ['1,234 mm', { why: 'two-readings', part: '1,234', other: '1.234 or 1234' }],
    ['1.234,5 mm', { why: 'comma-and-point' }],
    ['12 kg', { why: 'other-unit', part: 'kg', other: 'mass' }],
    ['4 furlong', { why: 'unknown-unit', part: 'furlong' }],
    ['7 in 4 ft', { why: 'order', part: 'ft', other: 'in' }],
    ['4 7', { why: 'no-unit' }],
    ['4 in 3', { why: 'no-unit', part: '3' }],
    ['-', { why: 'no-number' }],
    ['9'.repeat(99), { why: 'long' }],
  ])('%s', (text, said) => {
    const finding = refused(text);
    expect(finding).toMatchObject({ code: 'units/not-read', values: { dimension: 'length', ...said } });
    expect(inWords(finding)).toMatch(/Write 4 1\/2 in/);
  });

  it('any text gives a finite value or a finding, never a throw', () => {
    const options = fc.constantFrom<Dimension>('length', 'mass', 'angle', 'duration');
    const nearly = fc.stringMatching(/^[-+0-9 .,/'"½a-z°]{0,14}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string(), nearly), options, (text, dimension) => {
        const result = read(text, dimension);
        if (result.ok) expect(Number.isFinite(result.si)).toBe(true);
        else expect(inWords(result.finding).length).toBeGreaterThan(20);
      }),
      { seed: 7, numRuns: 3000 },
    );
  });
});

describe('laws', () => {
  const denominators = fc.constantFrom(1, 2, 4, 8, 16, 32, 64) as fc.Arbitrary<1 | 2 | 4 | 8 | 16 | 32 | 64>;

  it('64ths are exact: k/64 in is k × 0.396875 mm', () => {
    for (let k = 1; k <= 64 * 12; k++) {
      expect(siOf(`${k}/64 in`)).toBe((k * 396_875) / 1e9);
    }
  });

  it('reading what was formatted in inches gives exactly the tick', () => {
    const anyLength = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(anyLength, denominators, fc.boolean(), (lengthM, denominator, feet) => {
        const shown = formatInches(lengthM, { denominator, feet });
        expect(siOf(shown.text, 'length', 'mm')).toBe(
          lengthM - shown.remainderM === 0 ? 0 : siOf(shown.text),
        );
        expect(siOf(shown.text, 'length', 'mm') + shown.remainderM).toBeCloseTo(lengthM, 14);
        expect(Math.abs(shown.remainderM)).toBeLessThanOrEqual(0.0127 / denominator + 1e-12);
        const again = formatInches(siOf(shown.text), { denominator, feet });
        expect(again.text).toBe(shown.text);
        expect(again.remainderM).toBe(0);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it('reading what was formatted in mm, g, oz or degrees gives it back within half the last digit', () => {
    const value = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 3 }), (si, decimals) => {
        const half = 0.5001 * 10 ** -decimals;
        const within = (text: string, dimension: Dimension, unitSi: number) =>
          expect(Math.abs(siOf(text, dimension) - si)).toBeLessThanOrEqual(half * unitSi);
        within(formatLength(si, { system: 'mm', decimals }), 'length', 1e-3);
        within(formatGrams(si, decimals), 'mass', 1e-3);
        within(formatOunces(si, decimals), 'mass', 0.0283495);
        within(formatDegrees(si, decimals), 'angle', Math.PI / 180);
      }),
      { seed: 2, numRuns: 1000 },
    );
  });

  it('switching the shop between inches and mm never changes a stored value', () => {
    const typed = fc
      .tuple(
        fc.integer({ min: 0, max: 200 }),
        fc.integer({ min: 1, max: 63 }),
        fc.constantFrom('in', '"', ''),
      )
      .map(([whole, part, unit]) => `${whole} ${part}/64${unit}`);
    fc.assert(
      fc.property(typed, (text) => {
        const stored = Object.freeze({ si: siOf(text), text });
        const views: ReadOptions['system'][] = ['mm', 'inch', 'mm', 'inch'];
        const shown = views.map((system) =>
          formatLength(stored.si, { system, denominator: 64, decimals: 1 }),
        );
        expect(shown[0]).toBe(shown[2]);
        expect(shown[1]).toBe(shown[3]);
        expect(siOf(shown[3])).toBe(stored.si);
        expect(siOf(stored.text, 'length', 'mm')).toBe(siOf(stored.text, 'length', 'inch'));
      }),
      { seed: 3, numRuns: 500 },
    );
  });
});

describe('temperatures, volumes and densities', () => {
  /** °C = (°F − 32) × 5/9, 1 US fl oz = 29.5735295625 ml, 1 lb/gal = 119.826427 kg/m³: NIST SP 811, appendix B.8. */
  it.each<[string, Dimension, number]>([
    ['32 F', 'temperature', 0],
    ['212 °F', 'temperature', 100],
    ['-40 °C', 'temperature', -40],
    ['-40 F', 'temperature', -40],
    ['72 degrees', 'temperature', Number.NaN],
    ['21 ℃', 'temperature', 21],
    ['9 F', 'warmer', 5],
    ['10 K', 'warmer', 10],
    ['12 ml', 'volume', 12e-6],
    ['12 cc', 'volume', 12e-6],
    ['1/2 fl oz', 'volume', 14.78676478125e-6],
    ['1 fl. oz.', 'volume', 29.5735295625e-6],
    ['1.1 g/ml', 'density', 1100],
    ['1.1 g/cm3', 'density', 1100],
    ['1 lb/gal', 'density', 119.826427],
  ])('%s', (text, dimension, si) => {
    const result = read(text, dimension, 'mm');
    if (Number.isNaN(si)) expect(result.ok).toBe(false);
    else expect((result.ok && result.si / si) || Number(result.ok && result.si === si)).toBeCloseTo(1, 7);
  });
  it('a bare one is in the shop’s unit, and is told in it', () => {
    expect(siOf('72', 'temperature', 'inch')).toBeCloseTo(200 / 9, 12);
    expect(siOf('72', 'temperature', 'mm')).toBe(72);
    expect(read('22 C', 'temperature', 'inch')).toMatchObject({ understood: '22 °C = 71.6 °F' });
    expect(readQuantity('5', { dimension: 'mass', system: 'inch', weighsIn: 'oz' })).toMatchObject({
      understood: '5 oz',
    });
  });
  it('one stands alone: no two are added', () => {
    expect(refused('20 C 5 F', 'temperature').values).toMatchObject({ why: 'order' });
  });
});
