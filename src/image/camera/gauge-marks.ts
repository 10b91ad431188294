/**
 * How well the marks' places were told is told by the marks themselves: the standard error of a mark is taken as large as
 * its misfits say, so that errors of a tape are not read as a lens. Without it a picture whose marks are told 2 mm wrong
 * now and then gets half its focal length.
 *
 *   σ² = (Σ misfit² + ν s²) / (spare equations + ν)      repeated until it holds
 *
 * under a scaled inverse χ² belief in σ (ν, s), from above, so that of two answers the more careful one is found.
 * Source: D. J. C. MacKay, "Bayesian interpolation", Neural Computation 4 (1992) 415-447, on effective parameters.
 */
import { type CameraFit, cameraFit } from './camera-fit.ts';
import { type CameraFitInput, cameraUsual } from './camera-problem.ts';

export interface GaugeChoice {
  /** Pixels at first. */
  fromPx: number;
  /** What is believed beforehand, in pixels, and the number of equations which that is worth. Judgement. */
  usualPx: number;
  usualWeight: number;
  rounds: number;
}
export const gaugeChoice: GaugeChoice = { fromPx: 6, usualPx: 2, usualWeight: 3, rounds: 6 };

export function gaugedCameraFit(input: CameraFitInput, choice = gaugeChoice): CameraFit {
  const fitAt = (markSigmaPx: number, from?: readonly number[]) =>
    cameraFit({ ...input, usual: { ...input.usual, markSigmaPx } }, from);
  let sigmaPx = choice.fromPx;
  let fit = fitAt(sigmaPx);
  for (let round = 0; round < choice.rounds; round++) {
    const squares = fit.misfitPx.reduce((sum, { x, y }) => sum + x * x + y * y, 0);
    const spare = Math.max(0, 2 * input.marks.length - fit.toldByMarks);
    const likely = (squares + choice.usualWeight * choice.usualPx ** 2) / (spare + choice.usualWeight);
    const next = Math.max(cameraUsual.markSigmaPx, Math.sqrt(likely));
    if (Math.abs(next / sigmaPx - 1) < 0.05) break;
    sigmaPx = next;
    fit = fitAt(sigmaPx, fit.state);
  }
  return fit;
}
