import { type OrientedCurve, orientCurve } from '../../../engine/load-test/curve-beside.ts';
import type { CloseUpUse } from '../../../record/joined-curve.ts';
import type { LoadPhoto, PhotoTrace } from '../../../record/read-load-photo.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { tracedPhoto } from '../../../record/traced-curves.ts';

export interface SeenCurve {
  photo: LoadPhoto;
  trace: PhotoTrace;
  closeUps: readonly CloseUpUse[];
  curve: OrientedCurve;
}

/** The curve a test is judged by: of its newest picture of the whole rod whose curve still stands, close-ups joined in. */
export function seenCurve(test: LoadTest | undefined): SeenCurve | undefined {
  const traced = test && tracedPhoto(test);
  const curve = traced && orientCurve(traced.trace.points);
  return traced && curve ? { ...traced, curve } : undefined;
}
