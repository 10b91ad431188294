import type { Finding } from '../../../engine/finding.ts';
import { type CurvePoint, type CurveRing, curveText, ringsText } from '../../../record/load-curve.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import type { FieldValue } from '../../../record/schema.ts';
import { traceNotesText } from '../../../record/trace-notes.ts';

export interface NewTrace {
  photo: LoadPhoto;
  points: readonly CurvePoint[];
  rings: readonly CurveRing[];
  marksRmsM: number;
  cameraAwayM: number | undefined;
  seenShare: number;
  lensEstimated: boolean;
  findings: readonly Finding[];
  madeAt: string;
  engineVersion: string;
}

/** The record's row of a curve; a picture has one, the newest. */
export function traceChanges(trace: NewTrace): Change[] {
  const {
    photo,
    points,
    rings,
    marksRmsM,
    cameraAwayM,
    seenShare,
    lensEstimated,
    findings,
    madeAt,
    engineVersion,
  } = trace;
  return rowChanges('traces', photo.id, {
    photo: photo.id,
    madeAt,
    engineVersion,
    madeFrom: photo.madeFrom,
    curve: curveText(points),
    rings: rings.length > 0 ? ringsText(rings) : null,
    marksRms: millimetres(marksRmsM, 2),
    cameraAway: cameraAwayM === undefined ? null : millimetres(cameraAwayM, 0),
    seenShare: Math.min(1, Math.max(0, Number(seenShare.toFixed(4)))),
    lensEstimated,
    findings: traceNotesText(findings),
    gone: null,
  });
}

function millimetres(lengthM: number, decimals: number): FieldValue {
  const text = (lengthM * 1000).toFixed(decimals);
  return { si: Number(text) / 1000, text: `${text} mm` };
}
