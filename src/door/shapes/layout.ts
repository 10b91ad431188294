import { z } from 'zod';
import { byEachQuantity, type DeclaredCriterion, metrics } from '../../engine/layout/criteria.ts';
import { checkLayoutInSpace } from '../layout-in-space.ts';
import { contact } from './bend.ts';
import { benchOfRequest } from './fit.ts';
import {
  angleRad,
  answerLength,
  finding,
  keepOut,
  massKg,
  reel,
  rod,
  side,
  stationM,
  tensionN,
} from './measures.ts';

const ringHeightM = z.number().min(0).max(1);
const footM = z.array(z.number().min(0).max(1));
const limit = ({ mostLimit }: DeclaredCriterion) => z.number().positive().max(mostLimit);
const limits = {
  ...byEachQuantity(limit, (criterion) => limit(criterion).optional()),
  /** Of the first guide from the reel, where its line angle is to count. */
  firstLineAngleRad: z.number().positive().max(10).optional(),
};
const load = z.strictObject({
  tensionN,
  pullAngleRad: angleRad,
  pullSideRad: angleRad.optional(),
  tiedN: tensionN.optional(),
});
const intervals = z.enum(['growing', 'free']);

export const layoutRequest = z
  .strictObject({
    op: z.literal('layout'),
    answer: answerLength,
    /** Or `bench` and `freeM`, from the tip to the grip's front. */
    rod: rod.optional(),
    bench: benchOfRequest.optional(),
    freeM: z.number().min(0.01).max(100).optional(),
    buttAngleRad: angleRad,
    rollRad: angleRad.optional(),
    reel,
    guides: z.strictObject({
      count: z.int().min(2).max(60),
      ringHeightsM: z.array(ringHeightM),
      massesKg: z.array(massKg).optional(),
      footM: footM.optional(),
      side: side.optional(),
      /** Where each ring stands round the rod, in place of `side`. */
      aroundRad: z.array(angleRad).optional(),
    }),
    tipTop: z.strictObject({
      ringHeightM,
      massKg: massKg.optional(),
      /** Left out: as the guide next to it. */
      aroundRad: angleRad.optional(),
    }),
    /** Guides on top: how deep the line would cut into the blank counts too. */
    contact: contact.optional(),
    firstFromTipM: stationM,
    strippingFromTipM: stationM,
    footM: footM.optional(),
    keepOut: z.array(keepOut).max(100).optional(),
    pinned: z
      .array(z.strictObject({ index: z.int().min(0).max(59), fromTipM: stationM }))
      .max(60)
      .optional(),
    intervals: intervals.optional(),
    ladder: z.array(load).min(1).max(50).optional(),
    limits: z.strictObject(limits).partial().optional(),
    /** `kind` is an answer's word, taken as it is and not used. */
    start: z.strictObject({ fromTipM: z.array(stationM).max(60), kind: z.string().optional() }).optional(),
  })
  .superRefine(checkLayoutInSpace)
  .superRefine(requireOneRod)
  .superRefine(({ ladder }, context) => {
    if (!ladder || ladder.length === 0 || ladder.some((one) => one.tensionN > 0)) return;
    const message =
      'has no line at all: every tensionN is 0; give the line a tension, a small one where the weight is tied to the tip';
    context.addIssue({ code: 'custom', path: ['ladder'], message });
  });

function requireOneRod(
  { rod: given, bench, freeM }: { rod?: unknown; bench?: unknown; freeM?: number },
  context: z.core.$RefinementCtx,
): void {
  const complain = (path: string, message: string) =>
    context.addIssue({ code: 'custom', path: [path], message });
  if (!given && !bench) complain('rod', 'is missing: give the rod, or a bench and freeM in its place');
  if (given && bench) complain('bench', 'stands beside a rod: give one of the two');
  if (bench && freeM === undefined)
    complain('freeM', "is missing: a bench's rod is free from the tip to the grip's front; give that length");
  if (given && freeM !== undefined) complain('freeM', 'belongs to a bench; a rod has its own lengthM');
}

const score = z.strictObject({
  worst: z.number(),
  ...byEachQuantity(
    () => z.number(),
    () => z.number().optional(),
  ),
});
const worstAt = z.strictObject({
  metric: z.enum(metrics),
  load: z.int(),
  index: z.int(),
  value: z.number(),
  limit: z.number(),
  ratio: z.number(),
});
const found = {
  fromTipM: z.array(z.number()),
  score,
  worstAt,
  startScore: score,
  startWorstAt: worstAt,
  slackM: z.array(z.strictObject({ towardsTip: z.number(), towardsButt: z.number() })),
  leastWorst: z.number(),
  unevenness: z.number(),
  verdict: z.strictObject({ startIsAsGood: z.boolean(), gain: z.number(), text: z.string() }),
  findings: z.array(finding),
  limits: z.strictObject(limits),
  ladder: z.array(load),
  intervals,
  start: z.strictObject({
    fromTipM: z.array(z.number()),
    kind: z.enum(['given', 'arithmetic-rule', 'even']),
  }),
  /** From a bench only. */
  sureness: z
    .strictObject({
      worst: z.strictObject({ expected: z.number(), low: z.number(), high: z.number() }),
      betterThanStart: z.number(),
      costOfKeeping: z.number(),
      markSigmaM: z.array(z.number()),
    })
    .optional(),
};
export const layoutAnswer = z.discriminatedUnion('status', [
  z.strictObject({ status: z.literal('converged'), ...found }),
  z.strictObject({ status: z.enum(['branch-lost', 'not-converged']), reason: z.string(), ...found }),
]);
