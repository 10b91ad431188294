/** Readings that make a blank far stiffer or softer than its diameters can be: a unit, a weight or a reading is wrong. */

import type { Finding } from '../finding.ts';
import { fitFound } from './fit-kinds.ts';
import type { MostProbable } from './most-probable.ts';
import type { StiffnessPrior } from './prior.ts';
import type { Block } from './unknowns.ts';

/** In the mean of ln EI: twelve times, three of its standard deviations beforehand. */
const farLog = 2.5;

export function farFromBelief(
  { z }: Pick<MostProbable, 'z'>,
  { mean }: Pick<StiffnessPrior, 'mean'>,
  { start }: Pick<Block, 'start'>,
): Finding[] {
  const by = mean.reduce((sum, value, i) => sum + z[start + i] - value, 0) / mean.length;
  if (Math.abs(by) < farLog) return [];
  const times = Number(Math.exp(Math.abs(by)).toPrecision(1));
  return [fitFound('setups', 'fit/far-from-belief', { times, stiff: by > 0 })];
}
