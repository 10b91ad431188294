import { type BatchInput, batchRules } from '../engine/finish/batches.ts';
import { type Coat, commonTimes, type ProductTimes } from '../engine/finish/schedule.ts';
import type { DocumentState } from './operation.ts';
import { readRows, readSingle } from './read-values.ts';

export interface FinishChoices {
  times: ProductTimes;
  roomC: number;
  coatThicknessM: number;
  mix: Omit<BatchInput, 'neededMl' | 'wraps' | 'potLifeMin'>;
  /** In the order they were brushed on. */
  coats: Coat[];
}

/** The product and the room; what the data sheet was not asked for is common practice, no source. */
export function readFinish(state: DocumentState): FinishChoices {
  const row = readSingle(state, 'finish');
  const roomC = row.number('roomC') ?? commonTimes.statedC;
  return {
    roomC,
    coatThicknessM: row.si('coatThickness') ?? 0.00025,
    times: {
      statedC: row.number('statedAtC') ?? commonTimes.statedC,
      potLifeS: row.si('potLife') ?? commonTimes.potLifeS,
      turnForS: row.si('turnFor') ?? commonTimes.turnForS,
      recoatFromS: row.si('recoatFrom') ?? commonTimes.recoatFromS,
      recoatUntilS: row.si('recoatUntil') ?? commonTimes.recoatUntilS,
      flexAfterS: row.si('flexAfter') ?? commonTimes.flexAfterS,
      fishAfterS: row.si('fishAfter') ?? commonTimes.fishAfterS,
    },
    mix: {
      minutesPerWrap: row.number('minutesPerWrap') ?? 0.5,
      partA: row.number('partA') ?? 1,
      partB: row.number('partB') ?? 1,
      mixBy: row.text('mixBy') === 'mass' ? 'mass' : 'volume',
      densityA: row.number('densityA'),
      densityB: row.number('densityB'),
      measureStep: row.number('measureStep') ?? 0.1,
      rules: {
        ratioErrorPercent: row.number('ratioErrorPercent') ?? batchRules.ratioErrorPercent,
        brushedPercent: row.number('brushedPercent') ?? batchRules.brushedPercent,
        mixTimes: row.number('mixTimes') ?? batchRules.mixTimes,
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
