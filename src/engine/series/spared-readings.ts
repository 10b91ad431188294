/**
 * Whether the measured blanks of a series say enough for the next one to need fewer readings.
 *
 * From a simulation (spared-readings.test.ts): 30 invented series, every blank but the next read by the twenty-minute
 * protocol. Mean width of the 95 % band of ln EI: 0.542 of the full protocol alone; of half of it and two blanks
 * 0.541, three 0.527, five 0.514. Three are asked for. How alike real blanks of a series are is not known.
 */
import type { FitRequest } from '../stiffness/request.ts';
import { longestDifference } from './learn-series.ts';
import { readingsOf } from './member.ts';

/** Blanks measured in full, before the next is spared anything. */
export const enoughBlanks = 3;
/** Readings of a blank measured in full: the twenty-minute protocol has two more, taken again. */
export const fullReadings = 20;

/** How many of these blanks are of this length and measured in full. */
export function measuredInFull(others: readonly FitRequest[], lengthM: number): number {
  return others.filter(
    ({ blank, setups }) =>
      Math.abs(blank.lengthM / lengthM - 1) <= longestDifference &&
      setups.reduce((sum, setup) => sum + readingsOf(setup), 0) >= fullReadings,
  ).length;
}
