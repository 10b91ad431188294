import { type BatchInput, batchRules } from '../engine/finish/batches.ts';
import { commonFootHeightM } from '../engine/finish/coat-volume.ts';
import { type Coat, commonTimes, type ProductTimes } from '../engine/finish/schedule.ts';
import type { DocumentState } from './operation.ts';
import { readRows, readSingle } from './read-values.ts';

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

/** Two thin ones: common practice, no source. */
const commonCoats = 2;

/** The product and the room; what the data sheet was not asked for is common practice, no source. */
export function readFinish(state: DocumentState): FinishChoices {
  const row = readSingle(state, 'finish');
  const roomC = row.number('roomC') ?? commonTimes.statedC;
  return {
    roomC,
    coatThicknessM: row.si('coatThickness') ?? 0.00025,
    coatsInAll: Math.max(row.number('coatsPlanned') ?? commonCoats, readRows(state, 'coats').length),
    footHeightM: row.si('footHeight') ?? commonFootHeightM,
    times: {
      statedC: row.number('statedAtC') ?? commonTimes.statedC,
      potLifeS: row.si('potLife') ?? commonTimes.potLifeS,
      turnForS: row.si('turnFor') ?? commonTimes.turnForS,
      recoatFromS: row.si('recoatFrom') ?? commonTimes.recoatFromS,
      recoatUntilS: row.si('recoatUntil') ?? commonTimes.recoatUntilS,
      flexAfterS: row.si('flexAfter') ?? commonTimes.flexAfterS,
      fishAfterS: row.si('fishAfter') ?? commonTimes.fishAfterS,
      halvesPerC: row.number('halvesPerC') ?? commonTimes.halvesPerC,
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
