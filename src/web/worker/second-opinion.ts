import { fit } from '../../engine/stiffness/fit.ts';
import { secondEstimate } from '../../engine/stiffness/second-estimate.ts';
import type { SecondAnswer, SecondTask } from './doubt-messages.ts';

/** Beside a fit that has not seen the photograph, where anything else was measured. */
export function secondOpinion({ curve, others, fitted }: SecondTask): SecondAnswer {
  const alone = others.setups.length > 0 ? fit(others) : undefined;
  const beside = alone?.status === 'converged' ? alone : fitted;
  const { blank } = others;
  const estimate = secondEstimate({
    curve: curve.tests[0],
    clampFromTipM: curve.clampFromTipM ?? blank.lengthM,
    massPerLength: beside.massPerLength,
    sweepSigmaPerM: blank.sweepSigmaPerM,
    fitted: beside.stiffness,
  });
  return { ...estimate, besideItself: beside === fitted };
}
