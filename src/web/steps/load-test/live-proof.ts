/** A weight's bend predicted before it hangs, laid over the live picture, and what the picture then shows of it. */
import { type OrientedCurve, orientCurve, placeOnCurve } from '../../../engine/load-test/curve-beside.ts';
import { pencilM } from '../../../engine/load-test/judge-proof.ts';
import { commonFlags, type PredictedPlace } from '../../../engine/load-test/predict-places.ts';
import { cameraProject } from '../../../image/index.ts';
import type { LiveLook } from '../../../image/live/look-live.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { millimetres, type NewProof, newProof } from './new-proof.ts';
import { type ProofAsked, predictProof } from './predict-proof.ts';

export interface LiveProof {
  hungKg: number;
  /** The record's rows of tip and flags, in the order of `places`. */
  rowIds: readonly string[];
  places: readonly PredictedPlace[];
  /** Hold to tip, for the drawing. */
  drawn: readonly PredictedPlace[];
}
export type TracedLook = Extract<LiveLook, { status: 'traced' }>;

const drawnPlaces = 60;

export function lookCurve(look: TracedLook): OrientedCurve | undefined {
  return orientCurve(look.points);
}

/** The prediction and the record's changes that keep it as it is made; or why there is none. */
export function makeLiveProof(
  asked: ProofAsked,
  { order, newRowId, madeAt }: { order: number; newRowId: () => string; madeAt: string },
) {
  const freeM = asked.model.rod.lengthM;
  const stations = Array.from({ length: drawnPlaces }, (_, i) => ((i + 1) / drawnPlaces) * freeM * 0.999);
  const answer = predictProof(asked, stations);
  if (answer.status !== 'predicted') return answer;
  const flags = commonFlags(freeM).length;
  const places = answer.places.slice(0, 1 + flags);
  const rowIds: string[] = [];
  const noted = () => {
    const id = newRowId();
    rowIds.push(id);
    return id;
  };
  const { hungKg, buttAngleRad, guidesOn } = asked;
  const kept: NewProof = { hungKg, buttAngleRad, guidesOn, madeAt, places };
  const changes = newProof(kept, order, noted);
  const drawn = [...answer.places.slice(1 + flags).reverse(), places[0]];
  // The first row is the proof's own.
  return { status: 'predicted' as const, changes, proof: { hungKg, rowIds: rowIds.slice(1), places, drawn } };
}

/** Where the prediction would be seen, hold to tip. */
export function proofPixels(look: TracedLook, curve: OrientedCurve, proof: LiveProof): [number, number][] {
  const [hold] = look.points;
  const sign = curve.mirrored ? -1 : 1;
  return proof.drawn.map(({ outM, upM }) => {
    const { x, y } = cameraProject(look.camera, { x: hold.xM + sign * outM, y: hold.yM + upM });
    return [x, y];
  });
}

export interface ProofMiss {
  tipApartM: number;
  /** What the prediction and a pencil allow; undefined where nothing was hung on the blank yet. */
  allowedM: number | undefined;
}

export function proofMiss(curve: OrientedCurve, { places: [tip] }: LiveProof): ProofMiss {
  const seen = placeOnCurve(curve, 0);
  return {
    tipApartM: Math.hypot(seen.outM - tip.outM, seen.upM - tip.upM),
    allowedM: tip.reach && Math.hypot(tip.reach.outM, tip.reach.upM, pencilM),
  };
}

/** What the picture shows at tip and flags, for the proof's score. */
export function seenInProof(curve: OrientedCurve, proof: LiveProof): Change[] {
  return proof.places.flatMap(({ fromTipM }, i) => {
    const { outM, upM } = placeOnCurve(curve, fromTipM);
    return rowChanges('proofPlaces', proof.rowIds[i], {
      seenOut: millimetres(outM),
      seenUp: millimetres(upM),
    });
  });
}
