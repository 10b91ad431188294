/** The building blocks of requests and answers. Quantities are SI; every object refuses keys it does not know. */
import { z } from 'zod';

/**
 * Bounds are those of arithmetic, not of the bench: inside them the engine gives a number or says why not.
 * Anything a rod builder could mean lies well within.
 */
export const lengthM = z.number().min(0.01).max(100);
export const stationM = z.number().min(0).max(100);
export const angleRad = z.number().min(-100).max(100);
export const massKg = z.number().min(0).max(1e4);
export const forceN = z.number().min(-1e6).max(1e6);
export const tensionN = z.number().min(0).max(1e6);
export const sigmaM = z.number().positive().max(1);
export const side = z.enum(['under', 'over']);

const row = <T extends z.ZodRawShape>(shape: T) => z.strictObject({ fromTipM: stationM, ...shape });

/** A table runs from the tip down, each station once. */
function table<T extends z.ZodType<{ fromTipM: number }>>(rowShape: T) {
  return z
    .array(rowShape)
    .min(1)
    .max(100_000)
    .superRefine((rows, context) => {
      rows.forEach(({ fromTipM }, index) => {
        const before = index === 0 ? Number.NEGATIVE_INFINITY : rows[index - 1].fromTipM;
        if (fromTipM > before) return;
        const message = `comes after ${before} m; list the rows from the tip down, each station once (a step takes two rows close together)`;
        context.addIssue({ code: 'custom', path: [index, 'fromTipM'], message });
      });
    });
}

/** The band of an answer is taken as it is and not used. */
const bandNm2 = z.number().positive().optional();
export const stiffness = table(
  row({ EINm2: z.number().min(1e-9).max(1e9), lowNm2: bandNm2, highNm2: bandNm2 }),
);
export const massPerLength = table(row({ kgPerM: z.number().min(0).max(1e4) }));
const perM = z.number().min(-1000).max(1000);
export const restCurvature = table(row({ perM, sidePerM: perM.optional() }));
const gjWords =
  'should be above 0: every blank resists twist; take a share of EI there (docs/theory-space.md), or measure it with a bar across the tip';
/** Twisting stiffness; needed as soon as something leaves the plane of the rod. */
export const torsion = table(
  row({
    GJNm2: z
      .number()
      .max(1e9)
      .refine((value) => value >= 1e-9, gjWords),
  }),
);

/** `massPerLength` left out: massless. `restCurvature` left out: straight. */
export const rod = z.strictObject({
  lengthM,
  stiffness,
  massPerLength: massPerLength.optional(),
  restCurvature: restCurvature.optional(),
  torsion: torsion.optional(),
});

export const outsideDiameters = table(row({ outsideM: z.number().positive().max(1) }));

export const pointMass = row({ massKg });
export const reel = z.strictObject({
  alongM: z.number().min(-100).max(100),
  offsetM: z.number().min(-10).max(10),
  /** As a guide's; left out: the guides' side. */
  aroundRad: angleRad.optional(),
});
export const keepOut = z.strictObject({ fromTipM: stationM, toTipM: stationM });

/** What stands on a rod stands between its tip and its clamp. */
export function requireOnRod(
  places: readonly { fromTipM: number }[],
  at: { path: string; rodLengthM: number; what: string },
  context: z.core.$RefinementCtx,
): void {
  places.forEach(({ fromTipM }, index) => {
    if (fromTipM <= at.rodLengthM) return;
    const message = `lies beyond the rod, which is ${at.rodLengthM} m long; ${at.what} counts from the tip`;
    context.addIssue({ code: 'custom', path: [at.path, index, 'fromTipM'], message });
  });
}

/** Long tables are left out of a brief answer. */
export const answerLength = z.literal('brief').optional();

export const finding = z.strictObject({ path: z.string(), message: z.string() });
export const refused = z.strictObject({ status: z.literal('refused'), findings: z.array(finding).min(1) });
/** The engine met a state it was not written for; the process goes on. */
export const failed = z.strictObject({ status: z.literal('failed'), reason: z.string() });

/** A calculation's answer: as good as asked for, or the best it came to and why no better. */
export function solvedShape<Shape extends z.ZodRawShape>(solved: Shape) {
  return z.discriminatedUnion('status', [
    z.strictObject({ status: z.literal('converged'), ...solved }),
    z.strictObject({ status: z.literal('not-converged'), reason: z.string(), ...solved }),
  ]);
}
