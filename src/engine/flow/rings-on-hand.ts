import type { GuideKind } from '../kinds/guide-kinds.ts';
import { guideKindOf, guideNumbers } from '../kinds/guides.ts';
import { rodKindOf } from '../kinds/rod-kinds.ts';
import type { Choices } from './choices.ts';
import type { RingOnHand } from './reel-line-question.ts';

/** Sizes that the kinds of the rod's larger guides are listed in, with typical numbers: for a shop without a list. */
export function typicalRings({ rodKind, guides, lineWeight }: Choices, blankLengthM: number): RingOnHand[] {
  const { butt } = rodKindOf(rodKind).guides;
  const own = guides.slice(-1).map(({ kind }) => kind);
  const kinds = new Set<GuideKind>([butt({ lineWeight, blankLengthM }).kind, ...own]);
  return [...kinds].flatMap((kind) => guideKindOf(kind).listed.flatMap((size) => ringOf(kind, size)));
}

function ringOf(kind: GuideKind, listed: string): RingOnHand[] {
  const numbers = guideNumbers(kind, listed);
  if (numbers?.outsideM === undefined) return [];
  const { ringHeightM, insideM } = numbers;
  return [{ kind, size: `${listed} mm`, ringHeightM, insideM }];
}
