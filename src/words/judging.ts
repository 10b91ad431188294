/** What the judging of a taped-up rod says, in the bench's words. */
import type { MovesAnswer } from '../engine/load-test/find-moves.ts';
import type { LengthDoubt } from '../engine/load-test/length-doubt.ts';
import type { RodJudgement } from '../engine/load-test/rod-judgement.ts';
import { criterionWords, placeInWords } from './criteria.ts';
import type { Writer } from './writer.ts';

/** One picture shows one plane: rings beside it would be read at the wrong place. */
export const spiralInPhotoWords =
  'A spiral is not judged from a photograph: its rings stand beside the picture’s plane. Go by the figures on Layout, and by eye under load. The live view reads its guides under the rod.';

/** `3 of 4 places were seen where they were predicted`. */
export function agreedInWords({ agreed, counted }: { agreed: number; counted: number }): string {
  return counted === 1
    ? `The one place seen was ${agreed === 1 ? '' : 'not '}where it was predicted`
    : `${agreed} of ${counted} places were seen where they were predicted`;
}

/** `guide 4: 12 mm toward the butt, to 712 mm from the tip`. */
export function moveInWords({ guide, fromM, toM }: MovesAnswer['moves'][number], w: Writer): string {
  const way = toM > fromM ? 'butt' : 'tip';
  return `guide ${guide + 1}: ${w.tick(Math.abs(toM - fromM))} toward the ${way}, to ${w.length(toM)} from the tip`;
}

/** What the moves bring, or why there are none. */
export function gainInWords(moves: MovesAnswer, w: Writer): string {
  const { now, after, fell, of, gain, gainPlusMinus } = moves;
  const worst = `The worst, ${worstPlace(now)}, is at ${w.percent(now.ratio)} of your limit`;
  if (moves.moves.length > 0) {
    const still =
      after.ratio > 1
        ? ' That is still over your limit. Moves alone do not fix it: lay out again, or add a guide.'
        : '';
    return `${worst}; these moves bring it to ${w.percent(after.ratio)}. Leave the other guides. On ${fell} of ${of} blanks that fit readings and picture, they help.${still}`;
  }
  if (!(gain > 0.005)) return `Leave the guides. ${worst}, and no move of up to three guides lowers it.`;
  return `Leave the guides. ${worst}. The best moves would lower it by ${w.percent(gain)} ±${w.percent(gainPlusMinus)}: too small to see in this picture.`;
}

function worstPlace(worst: MovesAnswer['now']): string {
  return `${criterionWords[worst.metric].name} ${worst.metric === 'lineAngle' ? 'at ' : ''}${placeInWords(worst)}`;
}

/** Why no move is proposed where the curve is not as long as the rod, and the remedy. */
export function withheldInWords({ tracedM, rodM, plusMinusM }: LengthDoubt, w: Writer): string {
  return (
    "Tap butt and tip again, the butt at the grip's front. Then check the marks' distances and this build's lengths. " +
    `The curve is ${w.length(tracedM)} ±${w.tick(plusMinusM)} long, the rod in front of its grip ${w.length(rodM)}. ` +
    'So no guide’s place on it is sure, and no move is proposed.'
  );
}

export const contradictedWords =
  'Picture and readings disagree. Check the weight and the marks. Until then the picture counts more.';

/** Guides that stand off their marks by more than the photograph may err. */
export function offMarks({ rings }: RodJudgement, w: Writer): { guide: number; words: string }[] {
  return rings.flatMap(({ tapped, fromTipM, markFromTipM }, ring) => {
    const off = fromTipM.value - markFromTipM;
    if (ring === 0 || !tapped || Math.abs(off) <= 1.5 * fromTipM.plusMinus) return [];
    const words = `Guide ${ring} is ${w.tick(Math.abs(off))} ±${w.tick(fromTipM.plusMinus)} nearer the ${off > 0 ? 'butt' : 'tip'} than its mark`;
    return [{ guide: ring - 1, words }];
  });
}

/** `14.9° ±1.2°`. */
export function angleInWords({ value, plusMinus }: { value: number; plusMinus: number }, w: Writer): string {
  return `${w.lineAngle(value)} ±${w.lineAngle(plusMinus)}`;
}
