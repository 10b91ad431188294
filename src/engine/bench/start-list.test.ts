import { describe, expect, it } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { assembleBlank } from './assemble.ts';
import { findSlips } from './chart-slip.ts';
import { checkStations } from './check-stations.ts';
import { keepOutZones } from './ferrule-zones.ts';
import { arithmeticRule, type ListOptions, readStationList } from './start-list.ts';
import { fourPiece } from './test-bench.ts';

const inch = 0.0254;
const inches = (list: number[]) => list.map((value) => value * inch);
const options: ListOptions = { system: 'inch', from: 'tip', blankLengthM: 108 * inch };

function stations(text: string, given: Partial<ListOptions> = {}): number[] {
  const list = readStationList(text, { ...options, ...given });
  if (!list.ok) throw new Error(list.findings.map(inWords).join());
  return list.fromTipM.map((station) => Math.round((station / inch) * 1000) / 1000);
}
function rule(count: number, first: number, stripping: number): number[] {
  const list = arithmeticRule({ count, firstFromTipM: first * inch, strippingFromTipM: stripping * inch });
  return list.ok ? list.fromTipM : [];
}

describe('arithmetic rule', () => {
  // Common practice, no source; the sums are our own, rounded to a tenth of an inch.
  it.each([
    [8, 3.5, 62, [3.5, 8.2, 14.1, 21.3, 29.6, 39.2, 50.0, 62.0]],
    [10, 4.5, 78, [4.5, 9.7, 15.7, 22.4, 29.8, 38.0, 46.9, 56.5, 66.9, 78.0]],
    [11, 4.5, 78, [4.5, 9.5, 15.1, 21.1, 27.7, 34.8, 42.4, 50.5, 59.2, 68.3, 78.0]],
  ])('%i guides from %f to %f in', (count, first, stripping, expected) => {
    const found = rule(count, first, stripping);
    expect(found).toHaveLength(count);
    found.forEach((station, index) => {
      expect(Math.abs(station / inch - expected[index])).toBeLessThanOrEqual(0.0501);
    });
  });
  it('every interval is longer than the one before by the same length', () => {
    const found = [0, ...rule(10, 4.5, 78)];
    const seconds = found.slice(2).map((station, i) => station - 2 * found[i + 1] + found[i]);
    for (const second of seconds) expect(second).toBeCloseTo(seconds[0], 12);
  });
  it.each([
    [1, 4.5, 78, 'layout/-/startCount'],
    [10, 80, 78, 'layout/-/startFirst'],
    [10, 20, 78, 'layout/-/startFirst'],
  ])('%i guides from %f to %f in are refused at the field', (count, first, stripping, path) => {
    const list = arithmeticRule({ count, firstFromTipM: first * inch, strippingFromTipM: stripping * inch });
    expect(list.ok ? [] : list.findings.map((finding) => finding.path)).toEqual([path]);
  });
});

describe('a chart as typed or pasted', () => {
  it.each([
    ['4 1/2, 9 3/4, 15 3/4', [4.5, 9.75, 15.75]],
    ['4-1/2 9-3/4 15-3/4', [4.5, 9.75, 15.75]],
    ['4½" 9¾" 15¾"', [4.5, 9.75, 15.75]],
    ['4.5, 9.7,15.7', [4.5, 9.7, 15.7]],
    ['4.5,9.7,15.7', [4.5, 9.7, 15.7]],
    ['4,9,15', [4, 9, 15]],
    ['4,5 9,7 15,7', [4.5, 9.7, 15.7]],
    ['4,5; 9,7; 15,7', [4.5, 9.7, 15.7]],
    ['1\t4 1/2\n2\t9 3/4\n3\t15 3/4\n', [4.5, 9.75, 15.75]],
    ['1) 4 1/2\n2) 9 3/4\n3) 15 3/4', [4.5, 9.75, 15.75]],
    ['Guide 1: 4.5"\nGuide 2: 9.75"\nStripper: 15.75"', [4.5, 9.75, 15.75]],
    ['0, 4.5, 9.7', [4.5, 9.7]],
    ['11 in, 1\' 11 1/2", 3\' 0"', [11, 23.5, 36]],
    ['114.3 mm; 254 mm', [4.5, 10]],
  ])('%s', (text, expected) => expect(stations(text)).toEqual(expected));

  it('in every unit that a field takes, spelled out or short', () => {
    expect(stations('2 feet 3 inches, 4 ft 1/2 in; 57 inches')).toEqual([27, 48.5, 57]);
    expect(stations('1 foot 6 ins\n2 ft 3 ft 4 ft')).toEqual([18, 24, 36, 48]);
    expect(stations('25.4 centimetres 0.508 metres 762 millimeters')).toEqual([10, 20, 30]);
    expect(stations("2' 3\" 4'")).toEqual([27, 48]);
  });
  it('millimetres where the list says so', () => {
    expect(stations('114.3\n254', { system: 'mm' })).toEqual([4.5, 10]);
  });
  it('counted from the butt it is turned round', () => {
    expect(stations('30 41 1/2 98', { from: 'butt' })).toEqual([10, 66.5, 78]);
    expect(stations('98 41.5 30', { from: 'butt' })).toEqual([10, 66.5, 78]);
  });
  it.each([
    ['', /empty/],
    ['4 1/2, about nine', /about|nine/],
    ['4.5 kg', /kg/],
  ])('"%s" is refused by name', (text, message) => {
    const list = readStationList(text, options);
    expect(list.ok ? '' : inWords(list.findings[0])).toMatch(message);
  });
});

describe('slips in a chart', () => {
  const chart = [4.5, 9.75, 15.75, 22.5, 29.75, 38, 47, 56.5, 67, 78];
  it('a chart rounded to a quarter inch, and one nudged clear of a ferrule, hold none', () => {
    expect(findSlips(inches(chart))).toEqual([]);
    const nudged = chart.map((mark, index) => (index === 7 ? mark - 0.9 : mark));
    expect(findSlips(inches(nudged))).toEqual([]);
  });
  it.each([
    [4, 27.95, 29.75],
    [6, 74, 47],
    [2, 1.575, 15.75],
    [9, 87, 78],
    [0, 45, 4.5],
  ])('mark %i typed as %f in is named, with about %f in', (index, typed, meant) => {
    const list = inches(chart.map((mark, i) => (i === index ? typed : mark)));
    const slips = findSlips(list);
    expect(slips.map((slip) => slip.index)).toEqual([index]);
    expect(Math.abs(slips[0].likelyM / inch - meant)).toBeLessThan(0.6);
  });
  it('two slips are both named', () => {
    const list = inches(chart.map((mark, i) => ({ 3: 25.2, 7: 65.5 })[i] ?? mark));
    expect(
      findSlips(list)
        .map((slip) => slip.index)
        .sort(),
    ).toEqual([3, 7]);
  });
});

describe('marks that cannot stand', () => {
  const blank = assembleBlank(fourPiece().sections);
  const check = (fromTipM: number[]) =>
    checkStations({
      blank,
      freeLengthM: blank.lengthM - 0.26,
      zones: keepOutZones(blank),
      fromTipM,
      path: (index) => `guides/${index}/station`,
    });
  it.each([
    ['no guide', [], 'bench/no-marks'],
    ['at the tip', [0, 0.2], 'bench/mark-above-tip'],
    ['out of order', [0.2, 0.1], 'bench/marks-order'],
    ['twice the same', [0.2, 0.2], 'bench/marks-order'],
    ['beyond the blank', [0.1, 3], 'bench/mark-off-blank'],
    ['under the grip', [0.1, 2.6], 'bench/mark-under-grip'],
    ['on a ferrule', [0.1, 0.7], 'bench/mark-on-ferrule'],
  ])('%s', (_, list, code) => {
    expect(check(list).map((finding) => finding.code)).toContain(code);
  });
  it('a good list passes', () => {
    expect(check([0.114, 0.247, 0.4, 0.57, 0.757])).toEqual([]);
  });
});
