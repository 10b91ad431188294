/** A photographed load test of the taped-up rod as the judging takes it. */
import type { Choices } from '../engine/flow/choices.ts';
import { ladderLoad } from '../engine/flow/loads.ts';
import type { LadderRequest } from '../engine/layout/ladder-request.ts';
import type { LayoutRequest } from '../engine/layout/layout-request.ts';
import type { JudgeRequest } from '../engine/load-test/rod-judgement.ts';
import type { PlanePoint } from '../engine/stiffness/curve-places.ts';
import type { FitRequest } from '../engine/stiffness/request.ts';
import type { CurveRing } from './load-curve.ts';
import type { LoadTest } from './read-load-tests.ts';
import { driftOf, tracedPhoto } from './traced-curves.ts';

interface JudgeParts {
  /** The bench without this photograph. */
  fit: FitRequest;
  request: LayoutRequest & LadderRequest;
  marksFromTipM: readonly number[];
  choices: Choices;
}

/** Undefined where the test shows a bare blank, its weight is not known or no curve was read. */
export function judgeQuestion(test: LoadTest, parts: JudgeParts): JudgeRequest | undefined {
  const traced = tracedPhoto(test);
  if (test.rod !== 'taped' || test.hungKg === undefined || !traced) return undefined;
  const { points, rings } = traced.trace;
  const { choices, fit, request, marksFromTipM } = parts;
  const tip = points[points.length - 1];
  return {
    fit,
    layout: request,
    marksFromTipM,
    photo: {
      points: points.map(placeOf),
      ringsSeen: [tipTopRing(rings, tip), ...choices.guides.map(({ id }) => ringOf(rings, id))],
      load: ladderLoad(test.hungKg, choices.loadBy, choices.tautLineKg),
      buttAngleRad: test.buttAngleRad,
      driftSigmaM: driftOf(traced.trace),
    },
  };
}

function placeOf({ xM, yM }: PlanePoint): PlanePoint {
  return { xM, yM };
}

function ringOf(rings: readonly CurveRing[], guide: string | undefined): PlanePoint | undefined {
  const ring = guide === undefined ? undefined : rings.find((one) => one.guide === guide);
  return ring && placeOf(ring);
}

/** The tip-top has no row among the guides: a ring without one, next to the tip, is its. */
function tipTopRing(rings: readonly CurveRing[], tip: PlanePoint): PlanePoint | undefined {
  const near = rings.find(
    ({ guide, xM, yM }) => guide === undefined && Math.hypot(xM - tip.xM, yM - tip.yM) < 0.03,
  );
  return near && placeOf(near);
}
