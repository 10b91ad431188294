/**
 * The rod as it leaves the bench: blank, guides, thread and finish. What wraps stiffen is known only as a range
 * (finish/dressing.ts), so that the finished rod has two forms and says the difference between them.
 */
import type { AssembledBlank } from '../bench/assemble.ts';
import type { Bench } from '../bench/bench.ts';
import type { DiameterRow } from '../bench/diameter-profile.ts';
import type { FreeRod } from '../bench/free-rod.ts';
import type { PointMass } from '../bend/mesh.ts';
import { type Dressing, dressWraps, withBondedFootNm2 } from '../finish/dressing.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { planWraps } from '../wraps/plan-wraps.ts';
import type { Choices } from './choices.ts';

export interface RodToDress {
  bench: Bench;
  choices: Choices;
  blank: AssembledBlank;
  diameters: readonly DiameterRow[];
}

/** Thread and finish of every wrap, for guides at these marks. */
export function dressingOf(
  { bench, choices, blank, diameters }: RodToDress,
  marksFromTipM: readonly number[],
): Dressing[] {
  const { wraps, feet, coatThicknessM, coats, footHeightM } = choices.dress;
  const plan = planWraps({
    blank,
    profile: diameters,
    guides: feet.map((foot, index) => ({ ...foot, stationM: marksFromTipM[index] })),
    gripFrontFromButtM: bench.handle.gripFrontFromButtM,
    choices: wraps,
  });
  const { laidWidthM } = plan;
  return dressWraps(plan.wraps, { laidWidthM, coatThicknessM, coats, footHeightM });
}

/** Guides' own masses with what binds each of them. */
export function withDressing(guideKg: readonly number[], dressing: readonly Dressing[]): number[] {
  const masses = [...guideKg];
  for (const { guide, threadKg, finishKg } of dressing) {
    if (guide !== undefined) masses[guide] += threadKg + finishKg;
  }
  return masses;
}

export interface FinishedRod {
  rod: FreeRod;
  masses: PointMass[];
}
export interface FinishedRange {
  /** Thread and finish as a sleeve alone. */
  loose: FinishedRod;
  /** Every metal foot bonded to the blank as well. */
  bonded: FinishedRod;
  addedKg: { guides: number; thread: number; finish: number };
}

/** In front of the grip; `rod` is the bare one there. */
export function finishedRod(
  parts: RodToDress & { rod: FreeRod },
  marksFromTipM: readonly number[],
): FinishedRange {
  const { rod, choices } = parts;
  const dressing = dressingOf(parts, marksFromTipM).filter(({ toTipM }) => toTipM <= rod.lengthM);
  const guides = choices.guides.map(({ massKg }, index) => ({ fromTipM: marksFromTipM[index], massKg }));
  const masses = [
    { fromTipM: 0, massKg: choices.tipTop.massKg },
    ...guides,
    ...dressing.map(({ fromTipM, toTipM, threadKg, finishKg }) => ({
      fromTipM: (fromTipM + toTipM) / 2,
      massKg: threadKg + finishKg,
    })),
  ].filter(({ massKg }) => massKg > 0);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  return {
    loose: { rod: stiffened(rod, dressing, ({ sleeveNm2 }, blankNm2) => blankNm2 + sleeveNm2), masses },
    bonded: {
      rod: stiffened(
        rod,
        dressing,
        ({ sleeveNm2, overFoot, outsideM }, blankNm2) =>
          sleeveNm2 +
          (overFoot ? withBondedFootNm2(blankNm2, outsideM, choices.dress.footHeightM) : blankNm2),
      ),
      masses,
    },
    addedKg: {
      guides: choices.tipTop.massKg + sum(choices.guides.map(({ massKg }) => massKg)),
      thread: sum(dressing.map(({ threadKg }) => threadKg)),
      finish: sum(dressing.map(({ finishKg }) => finishKg)),
    },
  };
}

/** Width over which a wrap's stiffness sets in. */
const edgeM = 1e-4;

/** The stiffness table with a step at either end of every wrap; where wraps overlap the one nearer the tip counts. */
function stiffened(
  rod: FreeRod,
  dressing: readonly Dressing[],
  over: (wrap: Dressing, blankNm2: number) => number,
): FreeRod {
  const bare = piecewiseLinear(
    rod.stiffness.map(({ fromTipM }) => fromTipM),
    rod.stiffness.map(({ EINm2 }) => EINm2),
  );
  const places = [
    ...rod.stiffness.map(({ fromTipM }) => fromTipM),
    ...dressing.flatMap((wrap) => [wrap.fromTipM, inside(wrap).fromM, inside(wrap).toM, wrap.toTipM]),
  ].sort((a, b) => a - b);
  const stiffness = places
    .filter((at, i) => i === 0 || at > places[i - 1] + 1e-9)
    .map((fromTipM) => {
      const blankNm2 = valueAt(bare, fromTipM);
      const wrap = dressing.find((one) => inside(one).fromM <= fromTipM && fromTipM <= inside(one).toM);
      return { fromTipM, EINm2: wrap ? over(wrap, blankNm2) : blankNm2 };
    });
  return { ...rod, stiffness };
}

function inside({ fromTipM, toTipM }: Dressing): { fromM: number; toM: number } {
  return { fromM: fromTipM + edgeM, toM: toTipM - edgeM };
}
