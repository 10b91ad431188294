import { describe, expect, it } from 'vitest';
import { decadeLines, stationTicks } from './chart-ticks.ts';

describe('ticks of the stiffness chart', () => {
  it('every line lies inside the domain, and each decade has its nine', () => {
    const lines = decadeLines([0.04, 30]).map(({ value }) => value);
    expect(Math.min(...lines)).toBe(0.04);
    expect(Math.max(...lines)).toBe(30);
    expect(lines.filter((value) => value >= 0.1 && value < 1)).toHaveLength(9);
  });
  it('a short span numbers ones, twos and fives, a long one the decades alone', () => {
    const numbers = (domain: number[]) =>
      decadeLines(domain)
        .filter(({ major }) => major)
        .map(({ value }) => value);
    expect(numbers([1, 20])).toEqual([1, 2, 5, 10, 20]);
    expect(numbers([0.04, 30])).toEqual([0.1, 1, 10]);
  });
  it('stations stand on the blank, in feet or quarter metres, fewer on a narrow screen', () => {
    expect(stationTicks(2.743, 'inch', 1200).map(({ words }) => words)).toHaveLength(9);
    expect(stationTicks(2.75, 'mm', 1200).at(-1)).toEqual({ fromTipM: 2.75, words: '2750' });
    expect(stationTicks(2.743, 'inch', 300)).toHaveLength(5);
  });
});
