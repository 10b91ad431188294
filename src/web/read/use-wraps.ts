import { useMemo } from 'react';
import type { AssembledBlank } from '../../engine/bench/assemble.ts';
import { marksRound } from '../../engine/flow/guides-round.ts';
import { planWraps, type WrapPlan } from '../../engine/wraps/plan-wraps.ts';
import type { WrapChoices } from '../../engine/wraps/wrap-choices.ts';
import { readGuidesToWrap, readKeeper, readWrapChoices } from '../../record/read-wraps.ts';
import { roundBriefly } from '../../words/round.ts';
import { useBench } from './bench.tsx';

export interface WrapsOnRod {
  blank: AssembledBlank;
  choices: WrapChoices;
  plan: WrapPlan;
  /** Guides that have no mark yet; they are not wrapped. */
  unmarked: number;
  /** Where each guide stands round the blank, from the tip down; left out where all are on one line. */
  round?: readonly (string | undefined)[];
}

/** The wraps that follow from the marks, the guides' feet and the thread; undefined while there is no blank. */
export function useWraps(): WrapsOnRod | undefined {
  const { filled, bench, blank, profile, choices: layout } = useBench();
  return useMemo(() => {
    if (!bench || !blank || !layout || profile.length === 0) return undefined;
    const choices = readWrapChoices(filled);
    const guides = readGuidesToWrap(filled, layout.guides);
    const { gripFrontFromButtM } = bench.handle;
    const plan = planWraps({
      blank,
      profile,
      guides,
      keeper: readKeeper(filled, { lengthM: blank.lengthM, gripFrontFromButtM }),
      gripFrontFromButtM,
      choices,
    });
    const round = marksRound(layout, profile).map((at) => at && roundBriefly(at.fromTopRad, at.by));
    return {
      ...{ blank, choices, plan, unmarked: layout.guides.length - guides.length },
      ...(layout.spiral ? { round } : {}),
    };
  }, [filled, bench, blank, profile, layout]);
}
