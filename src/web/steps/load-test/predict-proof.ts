import type { BlankTables } from '../../../engine/bench/free-rod.ts';
import {
  commonFlags,
  type ProofPrediction,
  predictPlaces,
} from '../../../engine/load-test/predict-places.ts';
import type { Stiffness } from '../../read/bench.tsx';
import { massesOnRod } from '../../read/masses-on-rod.ts';
import type { SheetModel } from '../../read/sheet-model.ts';

export interface ProofAsked {
  model: SheetModel;
  stiffness: Stiffness;
  /** Of which the ± is read. */
  blanksThatFit: readonly BlankTables[];
  hungKg: number;
  buttAngleRad: number;
  guidesOn: boolean;
}

/** Tip and the three flags first, then `alsoAt`. */
export function predictProof(asked: ProofAsked, alsoAt: readonly number[] = []): ProofPrediction {
  const { model, stiffness, blanksThatFit, hungKg, buttAngleRad, guidesOn } = asked;
  const freeLengthM = model.rod.lengthM;
  return predictPlaces({
    tables: stiffness.solved ?? model.rod,
    blanksThatFit,
    freeLengthM,
    buttAngleRad,
    hungKg,
    masses: guidesOn ? massesOnRod(model) : [],
    flagsFromTipM: [...commonFlags(freeLengthM), ...alsoAt],
  });
}
