import type { Reason } from '../../../engine/finding.ts';
import { curveBeside, type FlagBeside } from '../../../engine/load-test/curve-beside.ts';
import { curveDoubts } from '../../../engine/load-test/curve-doubts.ts';
import { commonFlags, type PredictedPlace, predictPlaces } from '../../../engine/load-test/predict-places.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import type { SeenCurve } from '../../parts/photo/seen-curve.ts';
import { massesOnRod } from '../../read/masses-on-rod.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { Sentence } from '../../read/use-sentence.ts';
import type { ProofAsked } from './predict-proof.ts';

export interface Beside {
  flags: FlagBeside[];
  /** The predicted bend, tip to hold, for the drawing. */
  predicted: PredictedPlace[];
  buttAngleRad: number;
  /** What makes the comparison doubtful. */
  doubts: Reason[];
}
type BesideAnswer = { status: 'beside'; beside: Beside } | { status: 'not yet'; words: string };

const drawnPlaces = 40;

/** The curve of a test beside what was predicted for its weight; what is missing where it cannot be. */
export function besidePrediction(
  test: LoadTest,
  { curve }: SeenCurve,
  model: SheetModel,
  { stiffness, blanksThatFit }: Pick<ProofAsked, 'stiffness' | 'blanksThatFit'>,
  sentence: Sentence,
): BesideAnswer {
  if (!test.hungKg)
    return {
      status: 'not yet',
      words: 'Enter the weight that hung: the prediction for it then stands beside the curve.',
    };
  const freeLengthM = model.rod.lengthM;
  const buttAngleRad = test.buttAngleRad ?? curve.buttAngleRad;
  const flagsFromTipM = commonFlags(freeLengthM);
  const drawn = Array.from({ length: drawnPlaces }, (_, i) => ((i + 1) / drawnPlaces) * freeLengthM * 0.999);
  const answer = predictPlaces({
    tables: stiffness.solved ?? model.rod,
    blanksThatFit,
    freeLengthM,
    buttAngleRad,
    hungKg: test.hungKg,
    masses: test.rod === 'taped' ? massesOnRod(model) : [],
    flagsFromTipM: [...flagsFromTipM, ...drawn],
  });
  if (answer.status !== 'predicted')
    return { status: 'not yet', words: `Not predicted. ${sentence(answer.reason)}` };
  const [tip, ...more] = answer.places;
  const flags = more.slice(0, flagsFromTipM.length);
  return {
    status: 'beside',
    beside: {
      flags: curveBeside(curve, [tip, ...flags]),
      predicted: [tip, ...more.slice(flagsFromTipM.length)],
      buttAngleRad,
      doubts: curveDoubts(curve, { rodM: freeLengthM, buttAngleRad: test.buttAngleRad }),
    },
  };
}
