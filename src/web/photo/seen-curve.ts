import { type OrientedCurve, orientCurve } from '../../engine/load-test/curve-beside.ts';
import type { LoadPhoto, LoadTest, PhotoTrace } from '../../record/read-load-tests.ts';

export interface SeenCurve {
  photo: LoadPhoto;
  trace: PhotoTrace;
  curve: OrientedCurve;
}

/** The curve a test is judged by: of its newest picture of the whole rod whose curve still stands. */
export function seenCurve(test: LoadTest | undefined): SeenCurve | undefined {
  const whole = (test?.photos ?? []).filter(
    ({ part, trace }) => part === 'whole' && trace && !trace.outOfDate,
  );
  const photo = whole.at(-1);
  const curve = photo?.trace && orientCurve(photo.trace.points);
  return photo?.trace && curve ? { photo, trace: photo.trace, curve } : undefined;
}
