/** What page and report ask of a laid build in space and of two hands; one place, so that both say the same. */
import type { Handle } from '../bench/bench.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { OutsideDiameter } from '../layout/rule-reading.ts';
import type { BlankTorsion } from './blank-torsion.ts';
import { type Choices, choiceDefaults } from './choices.ts';
import { foregripOf } from './foregrip.ts';
import { guidesRound } from './guides-round.ts';
import type { SpiralQuestion } from './propose-spiral.ts';
import type { HandsQuestion, RoundQuestion } from './round-answer.ts';
import type { TwoGripsQuestion } from './two-grips.ts';

export interface LaidBuild {
  handle: Handle;
  choices: Choices;
  diameters: readonly OutsideDiameter[];
  ladder: LadderRequest;
  torsion: BlankTorsion;
  fromTipM: readonly number[];
}

/** Read in space whatever side the guides stand on. */
export function roundQuestion({ handle, choices, ladder, torsion, ...laid }: LaidBuild): RoundQuestion {
  return {
    ladder: { ...ladder, torsionShare: torsion.share },
    diameters: laid.diameters,
    fromTipM: laid.fromTipM,
    foregrip: foregripOf(handle, choices),
  };
}

/** Undefined for guides that are in no spiral. */
export function spiralQuestion(laid: LaidBuild): SpiralQuestion | undefined {
  const { spiral, guides } = laid.choices;
  if (!spiral) return undefined;
  const heightsM = guides.map(({ ringHeightM }) => ringHeightM);
  const round = guidesRound(laid.choices, guides, heightsM).map(({ fromTopRad, proposedRad }) => ({
    fromTopRad,
    proposedRad,
  }));
  return { ...roundQuestion(laid), by: spiral.by, round };
}

export function handsQuestion({ choices, ladder, torsion, fromTipM }: LaidBuild): HandsQuestion {
  const { share, low, high } = torsion;
  return { ladder, fromTipM, spiral: choices.spiral ?? choiceDefaults.spiral, shares: { share, low, high } };
}

/** Undefined for a rod that one hand holds, for hands that stand in each other's place, and for a spiral. */
export function gripsQuestion({
  handle,
  choices,
  ladder,
  fromTipM,
}: Pick<LaidBuild, 'handle' | 'choices' | 'ladder' | 'fromTipM'>): TwoGripsQuestion | undefined {
  const { hands, gripFrontFromButtM } = handle;
  if (!hands || choices.spiral) return undefined;
  const betweenM = hands.upperFromButtM - hands.lowerFromButtM;
  if (!(betweenM > 0)) return undefined;
  return { ladder, fromTipM, upperBehindM: gripFrontFromButtM - hands.upperFromButtM, betweenM };
}
