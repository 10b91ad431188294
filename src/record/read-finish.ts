import type { BatchInput } from '../engine/finish/batches.ts';
import type { Coat, ProductTimes } from '../engine/finish/schedule.ts';
import type { DocumentState } from './operation.ts';
import { oneOf, readRows, readSingle } from './read-values.ts';

export interface FinishChoices {
  times: ProductTimes;
  roomC: number;
  coatThicknessM: number;
  /** Coats on the finished rod: those planned, or those brushed on where there are more. */
  coatsInAll: number;
  footHeightM: number;
  mix: Omit<BatchInput, 'neededMl' | 'wraps' | 'potLifeMin'>;
  /** In the order they were brushed on. */
  coats: Coat[];
}

/** The product and the room; what the data sheet was not asked for is common practice, no source. */
export function readFinish(state: DocumentState): FinishChoices {
  const row = readSingle(state, 'finish');
  const roomC = row.orUsual('roomC');
  return {
    roomC,
    coatThicknessM: row.orUsual('coatThickness'),
    coatsInAll: Math.max(row.orUsual('coatsPlanned'), readRows(state, 'coats').length),
    footHeightM: row.orUsual('footHeight'),
    times: {
      statedC: row.orUsual('statedAtC'),
      potLifeS: row.orUsual('potLife'),
      turnForS: row.orUsual('turnFor'),
      recoatFromS: row.orUsual('recoatFrom'),
      recoatUntilS: row.orUsual('recoatUntil'),
      flexAfterS: row.orUsual('flexAfter'),
      fishAfterS: row.orUsual('fishAfter'),
      halvesPerC: row.orUsual('halvesPerC'),
    },
    mix: {
      minutesPerWrap: row.orUsual('minutesPerWrap'),
      partA: row.orUsual('partA'),
      partB: row.orUsual('partB'),
      mixBy: row.text('mixBy') === 'mass' ? 'mass' : 'volume',
      ratioBy: oneOf(row.text('ratioBy'), ['volume', 'mass']),
      densityA: row.number('densityA'),
      densityB: row.number('densityB'),
      measureStep: row.orUsual('measureStep'),
      rules: {
        ratioErrorPercent: row.orUsual('ratioErrorPercent'),
        brushedPercent: row.orUsual('brushedPercent'),
        mixTimes: row.orUsual('mixTimes'),
      },
    },
    coats: readRows(state, 'coats').flatMap((coat) => {
      const brushedAtMs = Date.parse(coat.text('brushedAt') ?? '');
      return Number.isNaN(brushedAtMs)
        ? []
        : [{ id: coat.id, brushedAtMs, roomC: coat.number('roomC') ?? roomC }];
    }),
  };
}
