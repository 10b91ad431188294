import { useMemo } from 'react';
import { expectedShape, type ShapePoint } from '../../../engine/flow/expected-reading.ts';
import type { Row } from '../../../record/document.ts';
import { useBench } from '../../read/bench.tsx';
import { siOf, textOf } from '../../read/values.ts';
import { usePlanContext } from './plan-context.ts';

/** The blank as it should hang in this set-up, by what is known of it so far; its tilt too, once a fit knows it. */
export function useExpected(setup: Row, hungKg: number): ShapePoint[] | undefined {
  const { profile, fit, stiffness } = useBench();
  const plan = usePlanContext();
  const clampFromTipM = siOf(setup, 'clampFromTip');
  const nominalAngleRad = siOf(setup, 'nominalAngle') ?? 0;
  const edge = textOf(setup, 'edge');
  const place = (fit?.rows ?? [])
    .filter(({ curve }) => !curve)
    .findIndex(({ setupId }) => setupId === setup.id);
  const tiltRad = place < 0 ? undefined : stiffness.solved?.tiltRad[place];
  return useMemo(() => {
    if (!plan || !clampFromTipM) return undefined;
    return expectedShape({
      tables: plan.tables,
      profile,
      clampFromTipM,
      nominalAngleRad,
      tiltRad,
      massKg: hungKg,
      edge: edge === 'upper' || edge === 'lower' ? edge : 'axis',
    });
  }, [plan, profile, clampFromTipM, nominalAngleRad, tiltRad, hungKg, edge]);
}
