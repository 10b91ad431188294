/** Where a layout's limits are kept: one field for each criterion. */
import type { Metric } from '../../engine/layout/criteria.ts';
import { angle, type FieldKind, length, real } from './field-kinds.ts';

export const limitFields: Readonly<Record<Metric, { field: string; kind: FieldKind }>> = {
  lineAngle: { field: 'limitLineAngle', kind: angle() },
  gap: { field: 'limitGap', kind: length(0, 1) },
  extraBend: { field: 'limitExtraBendPerM', kind: real(0, 10) },
};
