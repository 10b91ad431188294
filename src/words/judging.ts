/** What the judging of a taped-up rod says, in the bench's words; lengths come written in the shop's units. */
import type { MovesAnswer } from '../engine/load-test/find-moves.ts';
import type { RodJudgement } from '../engine/load-test/judge-rod.ts';
import type { LengthDoubt } from '../engine/load-test/length-doubt.ts';
import { formatDegrees } from '../engine/units/format-quantity.ts';
import { criterionWords, placeInWords } from './criteria.ts';

/** `guide 4: 12 mm towards the butt, to 712 mm from the tip`. */
export function moveInWords(
  { guide, fromM, toM }: MovesAnswer['moves'][number],
  length: (m: number) => string,
): string {
  const way = toM > fromM ? 'butt' : 'tip';
  return `guide ${guide + 1}: ${length(Math.abs(toM - fromM))} towards the ${way}, to ${length(toM)} from the tip`;
}

/** What the moves bring, or why there are none. */
export function gainInWords(moves: MovesAnswer): string {
  const { now, after, fell, of, gain, gainPlusMinus } = moves;
  const percent = (ratio: number) => `${Math.round(100 * ratio)} %`;
  if (moves.moves.length > 0) {
    const still =
      after.ratio > 1
        ? ' That is still past your limit: moves alone do not mend it; lay out anew, or add a guide.'
        : '';
    return `Brings the worst, ${worstPlace(now)}, from ${percent(now.ratio)} of your limit to ${percent(after.ratio)}; better on ${fell} of ${of} blanks that fit bench and photograph. The rest may stay.${still}`;
  }
  const stands = `The worst, ${worstPlace(now)}, stands at ${percent(now.ratio)} of your limit`;
  if (!(gain > 0.005))
    return `Leave it: ${stands.replace('The', 'the')}, and no move of up to three guides betters it.`;
  return `Leave it: ${stands.replace('The', 'the')}; the best moves found would lower it by ${percent(gain)} ± ${percent(gainPlusMinus)}, which is not more than this photograph can tell.`;
}

function worstPlace(worst: MovesAnswer['now']): string {
  return `${criterionWords[worst.metric].name} at ${placeInWords(worst)}`;
}

/** Why no move is proposed where the curve is not as long as the rod, and the remedy. */
export function withheldInWords(
  { tracedM, rodM, plusMinusM }: LengthDoubt,
  length: (m: number) => string,
): string {
  return (
    `No move is proposed: the traced curve is ${length(tracedM)} ± ${length(plusMinusM)} long, the rod in front of its ` +
    `grip ${length(rodM)}, so no guide’s place on it is sure. Tap butt and tip again, the butt at the grip’s front; ` +
    'then look at the marks’ measures, and at the lengths of sections and grip in this build.'
  );
}

/** Guides that stand off their marks by more than the photograph may err. */
export function offMarks(
  { rings }: RodJudgement,
  length: (m: number) => string,
): { guide: number; words: string }[] {
  return rings.flatMap(({ tapped, fromTipM, markFromTipM }, ring) => {
    const off = fromTipM.value - markFromTipM;
    if (ring === 0 || !tapped || Math.abs(off) <= 1.5 * fromTipM.plusMinus) return [];
    const words = `Guide ${ring} stands ${length(Math.abs(off))} ± ${length(fromTipM.plusMinus)} nearer the ${off > 0 ? 'butt' : 'tip'} than its mark`;
    return [{ guide: ring - 1, words }];
  });
}

/** `14.9° ± 1.2°`. */
export function angleInWords({ value, plusMinus }: { value: number; plusMinus: number }): string {
  return `${formatDegrees(value)} ± ${formatDegrees(plusMinus)}`;
}
