/** The operations the door knows: shape of the request, shape of the answer, and the engine call between. */
import type { z } from 'zod';
import { type BendAnswer, type BendRequest, bend } from '../engine/bend/bend.ts';
import { frequency } from '../engine/frequency/frequency.ts';
import { layout } from '../engine/layout/layout.ts';
import { rotation } from '../engine/rotation/rotation.ts';
import { fit } from '../engine/stiffness/fit.ts';
import { scanImage, traceImage } from '../image/index.ts';
import { layoutVerdictWords, lostLoadsWords } from '../words/layout-verdict.ts';
import { openImage } from './open-image.ts';
import { bendAnswer, bendRequest } from './shapes/bend.ts';
import { fitAnswer, fitRequest } from './shapes/fit.ts';
import { frequencyAnswer, frequencyRequest } from './shapes/frequency.ts';
import { layoutAnswer, layoutRequest } from './shapes/layout.ts';
import { rotationAnswer, rotationRequest } from './shapes/rotation.ts';
import { scanAnswer, scanRequest } from './shapes/scan.ts';
import { traceAnswer, traceRequest } from './shapes/trace.ts';

type LayoutAsked = Omit<z.infer<typeof layoutRequest>, 'op'>;

export interface Operation {
  request: z.ZodType;
  /** Beside `refused` and `failed`, which every operation may answer. */
  answer: z.ZodType;
  /** Takes what the request's shape let through. */
  run(request: unknown): object | Promise<object>;
}

function operation<Q extends z.ZodType>(
  request: Q,
  answer: z.ZodType,
  run: (asked: z.infer<Q>) => object | Promise<object>,
): Operation {
  return { request, answer, run: (asked) => run(asked as z.infer<Q>) };
}

export const operations: Readonly<Record<string, Operation>> = {
  bend: operation(bendRequest, bendAnswer, ({ op: _, ...asked }) => bendWithRings(asked)),
  fit: operation(fitRequest, fitAnswer, ({ op: _, ...asked }) => fit(asked)),
  layout: operation(layoutRequest, layoutAnswer, ({ op: _, ...asked }) => layoutOf(asked)),
  frequency: operation(frequencyRequest, frequencyAnswer, ({ op: _, ...asked }) => frequency(asked)),
  rotation: operation(rotationRequest, rotationAnswer, ({ op: _, ...asked }) => rotation(asked)),
  trace: operation(traceRequest, traceAnswer, ({ op: _, image, ...asked }) => {
    const picture = openImage(image);
    return picture.status === 'refused' ? picture : traceImage(asked, picture.pixels);
  }),
  scan: operation(scanRequest, scanAnswer, ({ op: _, image, ...asked }) => {
    const picture = openImage(image);
    return picture.status === 'refused' ? picture : scanImage(asked, picture.pixels);
  }),
};

/** Foot lengths are taken with the guides' other arrays as well as beside them. */
function layoutOf({ guides: { footM, ...guides }, ...asked }: LayoutAsked) {
  const answer = layout({ ...asked, guides, footM: asked.footM ?? footM });
  if (answer.status === 'refused') return answer;
  const { lostLoads: _, verdict, ...found } = answer;
  const { startIsAsGood, gain } = verdict;
  const reason = lostLoadsWords(answer);
  return {
    ...found,
    ...(reason ? { reason } : {}),
    verdict: { startIsAsGood, gain, text: layoutVerdictWords(verdict) },
  };
}

/**
 * A rod with rings and a reel but no line in the load is read with a slack line through them, pulled the way
 * the tip force points, so that the rings and spans are answered all the same.
 */
function bendWithRings(request: BendRequest): BendAnswer {
  const { guides = [], reel, load } = request;
  if (load.line || !reel || guides.length === 0) return bend(request);
  const { xN, yN } = load.tip ?? { xN: 0, yN: 0 };
  const pullAngleRad = xN === 0 && yN === 0 ? -Math.PI / 2 : Math.atan2(yN, xN);
  return bend({ ...request, load: { ...load, line: { tensionN: 0, pullAngleRad } } });
}
