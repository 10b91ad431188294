import { curveBeside, type FlagBeside } from '../../../engine/load-test/curve-beside.ts';
import { lengthDoubt } from '../../../engine/load-test/length-doubt.ts';
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
  /** What makes the comparison doubtful; sentences. */
  doubts: string[];
}
type BesideAnswer = { status: 'beside'; beside: Beside } | { status: 'not yet'; words: string };

/** Degrees by which typed and seen butt angle may differ before it is said: what a phone's level is good for. */
const angleSlackRad = (1.5 * Math.PI) / 180;
const drawnPlaces = 40;

/** The curve of a test beside what was predicted for its weight; what is missing where it cannot be. */
export function besidePrediction(
  test: LoadTest,
  { curve }: SeenCurve,
  model: SheetModel,
  { stiffness, blanksThatFit }: Pick<ProofAsked, 'stiffness' | 'blanksThatFit'>,
  { show, sentence }: { show: (lengthM: number) => string; sentence: Sentence },
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
      doubts: doubtsOf(test, curve, freeLengthM, show),
    },
  };
}

function doubtsOf(
  test: LoadTest,
  curve: SeenCurve['curve'],
  freeLengthM: number,
  show: (lengthM: number) => string,
) {
  const doubts: string[] = [];
  const points = curve.places.map(({ outM, upM }) => ({ xM: outM, yM: upM }));
  if (lengthDoubt(points, freeLengthM)) {
    doubts.push(
      `The curve is ${show(curve.lengthM)} long, the blank in front of the grip ${show(freeLengthM)}: the butt was tapped elsewhere than at the grip’s front, the marks’ measures are off, or a length in this build is.`,
    );
  }
  const { buttAngleRad } = test;
  if (buttAngleRad !== undefined && Math.abs(buttAngleRad - curve.buttAngleRad) > angleSlackRad) {
    const degrees = (angleRad: number) => ((angleRad * 180) / Math.PI).toFixed(1);
    doubts.push(
      `By the picture the butt rises ${degrees(curve.buttAngleRad)}°, entered were ${degrees(buttAngleRad)}°: the marks are not level, or the angle was read wrongly.`,
    );
  }
  return doubts;
}
