import { z } from 'zod';
import {
  angleRad,
  answerLength,
  finding,
  lengthM,
  massKg,
  sigmaM,
  solvedShape,
  stationM,
} from './measures.ts';

const section = z.strictObject({
  fromTipM: stationM,
  toTipM: stationM,
  massKg: massKg.optional(),
  balanceFromTipM: stationM.optional(),
});
const blank = z.strictObject({
  lengthM,
  diameters: z
    .array(z.strictObject({ fromTipM: stationM, outsideM: z.number().positive().max(1) }))
    .max(1000)
    .optional(),
  massKg: massKg.optional(),
  sweepSigmaPerM: z.number().min(0).max(10).optional(),
  sections: z.array(section).max(100).optional(),
  stiffZones: z
    .array(
      z.strictObject({
        fromTipM: stationM,
        toTipM: stationM,
        ratio: z.number().positive().max(100).optional(),
      }),
    )
    .max(100)
    .optional(),
  swings: z
    .array(
      z.strictObject({
        clampFromTipM: stationM.optional(),
        hz: z.number().positive().max(1000),
        sigmaHz: z.number().positive().max(1000),
      }),
    )
    .max(100)
    .optional(),
});
const clampSetup = z.strictObject({
  kind: z.literal('clamp').optional(),
  nominalAngleRad: angleRad,
  tiltSigmaRad: z.number().min(0).max(10).optional(),
  clampFromTipM: stationM.optional(),
  turnedRad: angleRad.optional(),
  tests: z
    .array(
      z.strictObject({
        hung: z
          .array(z.strictObject({ fromTipM: stationM, massKg }))
          .max(100)
          .optional(),
        readings: z
          .array(z.strictObject({ fromTipM: stationM, dropM: z.number().min(-100).max(100) }))
          .max(1000),
        sigmaM: sigmaM.optional(),
      }),
    )
    .max(200),
  flagChecks: z
    .array(z.strictObject({ fromTipM: stationM, fromClampM: stationM }))
    .max(100)
    .optional(),
});
const spanSetup = z.strictObject({
  kind: z.literal('span'),
  supportsFromTipM: z.tuple([stationM, stationM]),
  loadFromTipM: stationM,
  turnedRad: angleRad.optional(),
  tests: z
    .array(z.strictObject({ massKg, sagM: z.number().min(-100).max(100), sigmaM: sigmaM.optional() }))
    .max(200),
});

const masses = z
  .array(z.strictObject({ fromTipM: stationM, massKg }))
  .max(100)
  .optional();
/** As `trace` answers them; where it was seen and how wide is taken and not used. */
const tracedPoint = z.strictObject({
  xM: z.number().min(-100).max(100),
  yM: z.number().min(-100).max(100),
  sigmaM: z.number().min(0).max(100).optional(),
  px: z.tuple([z.number(), z.number()]).optional(),
  halfWidthPx: z.number().optional(),
});
const curve = z.strictObject({
  hung: masses,
  masses,
  line: z
    .strictObject({
      tensionN: z.number().min(0).max(500),
      pullAngleRad: angleRad,
      rings: z
        .array(z.strictObject({ fromTipM: stationM, ringHeightM: z.number().min(0).max(1) }))
        .min(1)
        .max(60),
      side: z.enum(['under', 'over']),
      reel: z.strictObject({ alongM: z.number().min(-100).max(100), offsetM: z.number().min(0).max(10) }),
    })
    .optional(),
  points: z.array(tracedPoint).min(8).max(2000),
  localSigmaM: sigmaM.optional(),
  driftSigmaM: sigmaM.optional(),
  levelSigmaRad: z.number().positive().max(0.5).optional(),
});
const curveSetup = z.strictObject({
  kind: z.literal('curve'),
  clampFromTipM: stationM.optional(),
  clampSigmaM: z.number().min(0).max(1).optional(),
  nominalAngleRad: angleRad.optional(),
  tiltSigmaRad: z.number().min(0).max(10).optional(),
  turnedRad: angleRad.optional(),
  shared: z.string().min(1).max(100).optional(),
  tests: z.tuple([curve]),
});

/** Only an unknown kind gets here; what is wrong inside a set-up is said by its own fields. */
const setupKinds = '"clamp" (or leave it out), "span" or "curve"';

const bench = {
  blank,
  setups: z
    .array(z.discriminatedUnion('kind', [clampSetup, spanSetup, curveSetup], { error: setupKinds }))
    .max(200),
};
export const fitRequest = z
  .strictObject({ op: z.literal('fit'), answer: answerLength, ...bench })
  .superRefine(inFrontOfClamp);
/** The same as another operation's `bench`. */
export const benchOfRequest = z.strictObject(bench).superRefine(inFrontOfClamp);

function inFrontOfClamp(request: z.infer<z.ZodObject<typeof bench>>, context: z.core.$RefinementCtx): void {
  request.setups.forEach((setup, s) => {
    if (setup.kind === 'span' || setup.kind === 'curve') return;
    const clampM = setup.clampFromTipM ?? request.blank.lengthM;
    const message = `lies behind the clamp, which stands ${clampM} m from the tip; only what is in front of it moves`;
    setup.tests.forEach(({ hung = [], readings }, t) => {
      for (const [list, rows] of Object.entries({ hung, readings })) {
        rows.forEach(({ fromTipM }, r) => {
          if (fromTipM <= clampM + 1e-9) return;
          const path = ['setups', s, 'tests', t, list, r, 'fromTipM'];
          context.addIssue({ code: 'custom', path, message });
        });
      }
    });
  });
}

/** The tables are left out of a brief answer. */
const solved = {
  stiffness: z
    .array(
      z.strictObject({ fromTipM: z.number(), EINm2: z.number(), lowNm2: z.number(), highNm2: z.number() }),
    )
    .min(41)
    .optional(),
  massPerLength: z.array(z.strictObject({ fromTipM: z.number(), kgPerM: z.number() })).optional(),
  restCurvature: z.array(z.strictObject({ fromTipM: z.number(), perM: z.number() })).optional(),
  tiltRad: z.array(z.number()),
  residualRmsM: z.number(),
  findings: z.array(finding),
  iterations: z.int(),
};
export const fitAnswer = solvedShape(solved);
