import type { PredictedPlace } from '../../../engine/load-test/predict-places.ts';
import { type Change, rowChanges } from '../../../record/operation.ts';
import type { FieldValue } from '../../../record/schema.ts';

export interface NewProof {
  hungKg: number;
  buttAngleRad: number;
  guidesOn: boolean;
  madeAt: string;
  places: readonly PredictedPlace[];
}

/** The record's rows for a prediction, frozen to a tenth of a millimetre. */
export function newProof(proof: NewProof, order: number, newRowId: () => string): Change[] {
  const { hungKg, buttAngleRad, guidesOn, madeAt, places } = proof;
  const id = newRowId();
  const degrees = (buttAngleRad * 180) / Math.PI;
  return [
    ...rowChanges('proofs', id, {
      order,
      madeAt,
      hung: { si: hungKg, text: `${hungKg * 1000} g` },
      buttAngle: { si: buttAngleRad, text: `${Number(degrees.toFixed(3))} deg` },
      guidesOn,
    }),
    ...places.flatMap(({ fromTipM, outM, upM, reach }, place) =>
      rowChanges('proofPlaces', newRowId(), {
        order: place,
        proof: id,
        fromTip: millimetres(fromTipM),
        out: millimetres(outM),
        up: millimetres(upM),
        ...(reach ? { outReach: millimetres(reach.outM), upReach: millimetres(reach.upM) } : {}),
      }),
    ),
  ];
}

export function millimetres(lengthM: number): FieldValue {
  const text = (lengthM * 1000).toFixed(1);
  return { si: Number(text) / 1000, text: `${text} mm` };
}
