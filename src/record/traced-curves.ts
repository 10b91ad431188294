/** Curves of the record's load tests as the engine takes them: whole pictures whose trace is of today's places. */
import type { CurveSetup } from '../engine/bench/bench.ts';
import { type CloseUpUse, withCloseUps } from './joined-curve.ts';
import type { DocumentState } from './operation.ts';
import type { LoadPhoto, PhotoTrace } from './read-load-photo.ts';
import { type LoadTest, readLoadTests, readStands } from './read-load-tests.ts';

interface TracedPhoto {
  photo: LoadPhoto;
  /** Its close-ups joined in. */
  trace: PhotoTrace;
  closeUps: CloseUpUse[];
}

/** The last whole picture of a test with a curve, and its close-ups; one whose places changed since does not count. */
export function tracedPhoto({ photos }: LoadTest): TracedPhoto | undefined {
  const whole = photos.filter(({ part }) => part === 'whole').reverse();
  for (const photo of whole) {
    const { trace } = photo;
    if (trace && !trace.outOfDate && trace.points.length >= 8) {
      return { photo, ...withCloseUps(trace, photos) };
    }
  }
  return undefined;
}

/** The middle of the stated errors: mostly marks and lens, which err smoothly. */
export function driftOf({ points }: PhotoTrace): number | undefined {
  const sorted = points.map(({ sigmaM }) => sigmaM).sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  return middle > 0 ? Math.min(0.05, Math.max(0.001, middle)) : undefined;
}

/** Bare blanks under a known weight, for the stiffness: lone pictures, then those of one stand after the other. */
export function bareCurves(state: DocumentState): CurveSetup[] {
  const stands = readStands(state).flatMap(({ tests }) => tests);
  return [...readLoadTests(state), ...stands].flatMap((test) => bareCurve(test) ?? []);
}

function bareCurve(test: LoadTest): CurveSetup | undefined {
  const { id, hungKg, rod, leftOut, madeAt, heldFromTipM, buttAngleRad, stand } = test;
  const traced = tracedPhoto(test);
  if (rod !== 'bare' || leftOut || hungKg === undefined || !traced) return undefined;
  const { points } = traced.trace;
  return {
    id,
    day: madeAt.slice(0, 10) || undefined,
    hungKg,
    clampFromTipM: heldFromTipM,
    nominalAngleRad: buttAngleRad,
    ...(stand === undefined
      ? { points: points.map(({ xM, yM }) => ({ xM, yM })), driftSigmaM: driftOf(traced.trace) }
      : { shared: stand, points: points.map(({ xM, yM, sigmaM, px }) => ({ xM, yM, sigmaM, px })) }),
  };
}
