/** The operations the door knows: shape of the request, shape of the answer, and the engine call between. */
import type { z } from 'zod';
import { layoutFromBench } from '../engine/flow/layout-from-bench.ts';
import { frequency } from '../engine/frequency/frequency.ts';
import { type LayoutFound, layout } from '../engine/layout/layout.ts';
import { rotation } from '../engine/rotation/rotation.ts';
import { spool } from '../engine/spool/spool.ts';
import { fit } from '../engine/stiffness/fit.ts';
import { scanImage, traceImage } from '../image/index.ts';
import { layoutVerdictWords, lostLoadsWords } from '../words/layout-verdict.ts';
import { bendAsked } from './bend-asked.ts';
import { openImage } from './open-image.ts';
import { bendAnswer, bendRequest } from './shapes/bend.ts';
import { fitAnswer, fitRequest } from './shapes/fit.ts';
import { frequencyAnswer, frequencyRequest } from './shapes/frequency.ts';
import { layoutAnswer, layoutRequest } from './shapes/layout.ts';
import { rotationAnswer, rotationRequest } from './shapes/rotation.ts';
import { scanAnswer, scanRequest } from './shapes/scan.ts';
import { spoolAnswer, spoolRequest } from './shapes/spool.ts';
import { traceAnswer, traceRequest } from './shapes/trace.ts';

type LayoutAsked = Omit<z.infer<typeof layoutRequest>, 'op' | 'answer'>;

export interface Operation {
  request: z.ZodType;
  /** Beside `refused` and `failed`, which every operation may answer. */
  answer: z.ZodType;
  /** Takes what the request's shape let through. */
  run(request: unknown): Promise<object>;
}

/** `brief`: the same answer without its long tables. */
function operation<Q extends z.ZodType, A extends object>(
  request: Q,
  answer: z.ZodType,
  run: (asked: Omit<z.infer<Q>, 'op' | 'answer'>) => A | Promise<A>,
  brief: (whole: A) => object = (whole) => whole,
): Operation {
  return {
    request,
    answer,
    run: async (request) => {
      const { op: _, answer: length, ...asked } = request as z.infer<Q> & { op: string; answer?: 'brief' };
      const whole = await run(asked as Omit<z.infer<Q>, 'op' | 'answer'>);
      return length === 'brief' ? brief(whole) : whole;
    },
  };
}

export const operations: Readonly<Record<string, Operation>> = {
  bend: operation(bendRequest, bendAnswer, bendAsked, briefBend),
  fit: operation(fitRequest, fitAnswer, fit, without('stiffness', 'massPerLength', 'restCurvature')),
  layout: operation(layoutRequest, layoutAnswer, layoutOf),
  frequency: operation(frequencyRequest, frequencyAnswer, frequency),
  rotation: operation(rotationRequest, rotationAnswer, rotation),
  spool: operation(spoolRequest, spoolAnswer, spool),
  trace: operation(
    traceRequest,
    traceAnswer,
    ({ image, ...asked }) => {
      const picture = openImage(image);
      return picture.status === 'refused' ? picture : traceImage(asked, picture.pixels);
    },
    without('points'),
  ),
  scan: operation(scanRequest, scanAnswer, ({ image, ...asked }) => {
    const picture = openImage(image);
    return picture.status === 'refused' ? picture : scanImage(asked, picture.pixels);
  }),
};

function without(...long: string[]): (whole: object) => object {
  return (whole) => Object.fromEntries(Object.entries(whole).filter(([key]) => !long.includes(key)));
}

function briefBend(whole: object): object {
  if (!('points' in whole)) return whole;
  const { points, ...rest } = whole as { points: readonly BentPoint[] };
  const [{ xM, yM, zM, angleRad, twistRad }] = points;
  return { ...rest, tip: { xM, yM, ...(zM === undefined ? {} : { zM, twistRad }), angleRad } };
}

interface BentPoint {
  xM: number;
  yM: number;
  zM?: number;
  angleRad: number;
  twistRad?: number;
}

/** Foot lengths are taken with the guides' other arrays as well as beside them. */
function layoutOf({ guides: { footM, side = 'under', ...guides }, rod, bench, freeM, ...rest }: LayoutAsked) {
  const asked = { ...rest, guides: { ...guides, side }, footM: rest.footM ?? footM };
  // the shape let through one of the two
  const answer =
    bench && freeM !== undefined
      ? layoutFromBench({ ...asked, bench, freeM })
      : layout({ ...asked, rod: rod! });
  return answer.status === 'refused' ? answer : verdictInWords(answer);
}

function verdictInWords({ lostLoads, verdict, ...found }: LayoutFound) {
  const { startIsAsGood, gain } = verdict;
  const reason = lostLoadsWords({ status: found.status, lostLoads });
  return {
    ...found,
    ...(reason ? { reason } : {}),
    verdict: { startIsAsGood, gain, text: layoutVerdictWords(verdict) },
  };
}
