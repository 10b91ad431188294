/** Where a layout's limits are kept: one field for each criterion. */
import type { Metric } from '../../engine/layout/criteria.ts';
import { angle, real, rule, trade } from './declare.ts';
import type { Field } from './field.ts';

const ofTheRod = { empty: 'usual of the rod' };
const degrees = Math.PI / 180;

export const limitFields: Readonly<Record<Metric, { field: string; declared: Field }>> = {
  lineAngle: {
    field: 'limitLineAngle',
    declared: angle('line angle in a ring', {
      ...ofTheRod,
      origin: trade(10 * degrees, 15 * degrees),
      hint: 'Where the line turns sharply it drags and wears the ring. Lower: guides closer where the bend is tight.',
    }),
  },
  gap: {
    field: 'limitGap',
    declared: rule('gap above the ring', [0, 1], {
      ...ofTheRod,
      hint: 'How far the line may leave the bend between two rings. A rule reads the ring height on top.',
    }),
  },
  extraBend: {
    field: 'limitExtraBendPerM',
    declared: real('bend added by the line', [0, 10], { ...ofTheRod, unit: '1/m' }),
  },
  intoBlank: {
    field: 'limitIntoBlank',
    declared: rule('line into the blank', [1e-4, 0.1], {
      ...ofTheRod,
      hint: 'Guides on top: how deep the straight line between two rings would cut into the blank. From 0 on it lies on it.',
    }),
  },
};
