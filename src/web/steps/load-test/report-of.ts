import type { LoadTest } from '../../../record/read-load-tests.ts';
import type { TestReport } from '../../../record/test-report.ts';
import { photoReading, placedNames } from '../../parts/photo/photo-request.ts';
import type { SeenCurve } from '../../parts/photo/seen-curve.ts';
import type { Beside } from './beside.ts';

/** What is kept with an accepted test, whatever is reckoned later. */
export function reportOf(
  test: LoadTest,
  { trace, curve, photo, closeUps }: SeenCurve,
  beside: Beside | undefined,
): TestReport {
  const { marks } = photoReading(photo, String);
  return {
    rod: test.rod,
    hungKg: test.hungKg,
    buttAngleRad: curve.buttAngleRad,
    lengthM: curve.lengthM,
    picture: photo.name,
    readOn: trace.madeAt,
    marksRmsM: trace.marksRmsM,
    engineVersion: trace.engineVersion,
    closeUps: closeUps.map(({ photo: { name }, joined, why }) => ({ photo: { name }, joined, why })),
    places: (beside?.flags ?? []).map(({ fromTipM, seen, apartM, predicted: { reach } }) => ({
      fromTipM,
      outM: seen.outM,
      upM: seen.upM,
      apartM,
      reachM: reach && Math.hypot(reach.outM, reach.upM),
    })),
    doubts: beside?.doubts ?? [],
    odd: trace.findings,
    marks: placedNames(marks).map((name) => name.replaceAll(' ', '-')),
  };
}
