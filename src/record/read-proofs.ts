import type { SeenPlace } from '../engine/load-test/judge-proof.ts';
import type { PredictedPlace } from '../engine/load-test/predict-places.ts';
import type { DocumentState } from './operation.ts';
import { readRows } from './read-values.ts';

export interface Proof {
  id: string;
  madeAt: string;
  hungKg: number;
  buttAngleRad: number;
  guidesOn: boolean;
  setAside: string | undefined;
  /** The tip first; `rowIds`, `predicted` and `seen` go together. */
  rowIds: string[];
  predicted: PredictedPlace[];
  seen: SeenPlace[];
}

/** The proofs in the order they were made, each with what was predicted that day and what was seen. */
export function readProofs(state: DocumentState): Proof[] {
  const places = readRows(state, 'proofPlaces');
  return readRows(state, 'proofs').flatMap((proof) => {
    const hungKg = proof.si('hung');
    const own = places.filter((place) => place.text('proof') === proof.id && place.si('out') !== undefined);
    if (hungKg === undefined || own.length === 0) return [];
    return [
      {
        id: proof.id,
        madeAt: proof.text('madeAt') ?? '',
        hungKg,
        buttAngleRad: proof.si('buttAngle') ?? 0,
        guidesOn: proof.flag('guidesOn'),
        setAside: proof.text('setAside'),
        rowIds: own.map(({ id }) => id),
        predicted: own.map((place) => {
          const [outM, upM] = [place.si('outReach'), place.si('upReach')];
          return {
            fromTipM: place.si('fromTip') ?? 0,
            outM: place.si('out') ?? 0,
            upM: place.si('up') ?? 0,
            reach: outM !== undefined && upM !== undefined ? { outM, upM } : undefined,
          };
        }),
        seen: own.map((place) => ({ outM: place.si('seenOut'), upM: place.si('seenUp') })),
      },
    ];
  });
}
