import { z } from 'zod';
import { checkSpace } from '../space-words.ts';
import {
  angleRad,
  answerLength,
  forceN,
  outsideDiameters,
  pointMass,
  reel,
  requireOnRod,
  rod,
  side,
  stationM,
  tensionN,
} from './measures.ts';

/** `aroundRad` in place of `side`: 0 under, +π/2 to the right seen from behind the butt, π over. */
const guide = z.strictObject({
  fromTipM: stationM,
  ringHeightM: z.number().min(0).max(1),
  side: side.optional(),
  aroundRad: angleRad.optional(),
});

/** Left out: the line runs freely. A range of coefficients is asked for as two requests. */
const friction = z.strictObject({ coefficient: z.number().min(0).max(2), direction: z.enum(['in', 'out']) });
/** Left out: the line passes through the blank where it meets it. */
export const contact = z.strictObject({ diameters: outsideDiameters });

export const bendRequest = z
  .strictObject({
    op: z.literal('bend'),
    answer: answerLength,
    rod,
    buttAngleRad: angleRad,
    /** The whole rod, rings and reel turned about the butt's axis: a ring under moves to the right. */
    rollRad: angleRad.optional(),
    masses: z.array(pointMass).max(10_000).optional(),
    guides: z.array(guide).max(500).optional(),
    reel: reel.optional(),
    load: z.strictObject({
      line: z.strictObject({ tensionN, pullAngleRad: angleRad, pullSideRad: angleRad.optional() }).optional(),
      tip: z.strictObject({ xN: forceN, yN: forceN, zN: forceN.optional() }).optional(),
    }),
    friction: friction.optional(),
    contact: contact.optional(),
  })
  .superRefine((request, context) => {
    const { masses = [], guides = [], load } = request;
    const rodLengthM = request.rod.lengthM;
    requireOnRod(masses, { path: 'masses', rodLengthM, what: 'a mass’s place' }, context);
    requireOnRod(guides, { path: 'guides', rodLengthM, what: 'a guide’s place' }, context);
    if (load.line && guides.length === 0) {
      const message = 'is missing: a line runs through rings: give at least the tip-top, at fromTipM 0';
      context.addIssue({ code: 'custom', path: ['guides'], message });
    }
    if (load.line && !request.reel) {
      const message = 'is missing: a line comes from a reel: give its place';
      context.addIssue({ code: 'custom', path: ['reel'], message });
    }
    for (const asked of ['friction', 'contact'] as const) {
      if (!request[asked] || load.line) continue;
      const message = `stands without a line: give load.line, or leave ${asked} out`;
      context.addIssue({ code: 'custom', path: [asked], message });
    }
    checkSpace(request, context);
    guides.forEach(({ fromTipM }, index) => {
      const message =
        index === 0 && fromTipM !== 0
          ? 'should be 0: the tip-top comes first, at the tip'
          : index > 0 && fromTipM <= guides[index - 1].fromTipM
            ? `does not follow ${guides[index - 1].fromTipM} m; list the guides from the tip down, each place once`
            : undefined;
      if (message) context.addIssue({ code: 'custom', path: ['guides', index, 'fromTipM'], message });
    });
  });

const solved = {
  points: z
    .array(
      z.strictObject({
        fromTipM: z.number(),
        xM: z.number(),
        yM: z.number(),
        angleRad: z.number(),
        curvaturePerM: z.number(),
        zM: z.number().optional(),
        sideCurvaturePerM: z.number().optional(),
        twistRad: z.number().optional(),
      }),
    )
    .min(101)
    .optional(),
  /** In a brief answer, in place of `points`. */
  tip: z
    .strictObject({
      xM: z.number(),
      yM: z.number(),
      zM: z.number().optional(),
      angleRad: z.number(),
      twistRad: z.number().optional(),
    })
    .optional(),
  rings: z.array(
    z.strictObject({ xM: z.number(), yM: z.number(), zM: z.number().optional(), lineAngleRad: z.number() }),
  ),
  spans: z.array(z.strictObject({ gapM: z.number(), extraBendPerM: z.number() })),
  /** With friction only: the tension behind every ring, tip first; the last is the reel's. */
  lineTensionN: z.array(z.number()).optional(),
  /** With contact only: every stretch behind a ring, and how far from each ring the next may stand clear of the blank. */
  contact: z
    .strictObject({
      stretches: z.array(
        z.strictObject({
          touches: z.boolean(),
          touchedFromTipM: z.number().optional(),
          touchedToTipM: z.number().optional(),
        }),
      ),
      /** In the plane only. */
      clear: z.array(z.strictObject({ fromTipM: z.number(), largestClearM: z.number() })).optional(),
    })
    .optional(),
  /** Asked in space: what the clamp gives the rod about the butt's axis, positive in the sense of `rollRad`. */
  gripTorqueNm: z.number().optional(),
  /** With `rod.torsion`; in the plane without friction and contact: whether a small push leaves the rod where it is. */
  stable: z.boolean().optional(),
  iterations: z.int(),
  residual: z.number(),
};
export const bendAnswer = z.discriminatedUnion('status', [
  z.strictObject({ status: z.literal('converged'), ...solved }),
  z.strictObject({ status: z.enum(['branch-lost', 'not-converged']), reason: z.string(), ...solved }),
]);
