/** What to read next, and when it is enough, in the bench's words. */
import type { NextReading, WeighedOption } from '../engine/sureness/next-reading.ts';
import type { ReadingOption } from '../engine/sureness/reading-option.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';

export interface ReadingWording {
  /** A place on the blank, as a tape shows it. */
  place: (fromTipM: number) => string;
  /** A slack, a ± or a move of a mark. */
  size: (lengthM: number) => string;
}

/** `Set the blocks 27 in from the tip. With nothing hung, then with 25 g: read the drop at the tip.` */
export function readingInWords(option: ReadingOption, { place }: ReadingWording): string {
  const { standing, clampFromTipM, turnedRad, loads, swings, supportsFromTipM } = option;
  if (swings)
    return `Hold the bare blank ${place(clampFromTipM)} from the tip, let the tip swing a hand’s width and time ${swings.count} swings, there and back: about ${swings.seconds.toFixed(0)} s.`;
  if (supportsFromTipM) {
    const [a, b] = supportsFromTipM.map(place);
    const [at, kg] = [place(loads[0].readFromTipM[0]), loads[loads.length - 1].massKg];
    return `Lay the blank on two supports, ${a} and ${b} from the tip. With nothing hung, then with ${formatGrams(kg, 1)} at ${at}: read the sag there, to half a millimetre, below a thread drawn over both supports.`;
  }
  const turned = turnedRad === 0 || standing !== undefined ? '' : ', the blank turned half over';
  const where =
    standing === undefined
      ? `Set the blocks ${place(clampFromTipM)} from the tip${turned}.`
      : 'Leave the blocks as they stand.';
  const hang = loads.map(({ massKg }) =>
    massKg > 0 ? `with ${formatGrams(massKg, 1)}` : 'with nothing hung',
  );
  const stations = listed(loads[0].readFromTipM.map((at) => (at === 0 ? 'the tip' : place(at))));
  const sentence = `${hang.join(', then ')}: read the drop at ${stations}.`;
  return `${where} ${sentence[0].toUpperCase()}${sentence.slice(1)}`;
}

/** `Narrows guide 4 most: from ±41 mm to ±29 mm, its slack ±6 mm.` */
export function narrowingInWords(
  option: WeighedOption,
  { plusMinusM, slackM }: NextReading,
  { size }: ReadingWording,
): string {
  const fall = plusMinusM.map((now, mark) => (now ** 2 - option.plusMinusM[mark] ** 2) / slackM[mark] ** 2);
  const most = fall.indexOf(Math.max(...fall));
  const [now, then, slack] = [plusMinusM[most], option.plusMinusM[most], slackM[most]].map(size);
  const little = option.plusMinusM[most] > smallShare * plusMinusM[most];
  const words = `narrows guide ${most + 1} most: from ±${now} to ±${then}, its slack ±${slack}`;
  return little
    ? `Even the best on the list tells little: it ${words}; many places are nearly as good there`
    : `It ${words}`;
}

/** A ± that falls by less than a tenth has hardly fallen. */
const smallShare = 0.9;

/** The rule that ended it, with its numbers; where it has not, what is still to be had. */
export function enoughInWords(next: NextReading, wording: ReadingWording): string {
  const ten = tenMinutesInWords(next, wording);
  return ten ? `${ruleInWords(next, wording)} ${ten}` : ruleInWords(next, wording);
}

/** `Ten more minutes bring guide 4 from ±41 mm to ±29 mm and the worst reading down by about 1 %.` */
function tenMinutesInWords(
  { tenMinutes, plusMinusM, slackM }: NextReading,
  { size }: ReadingWording,
): string | undefined {
  if (!tenMinutes) return undefined;
  const { option, gain } = tenMinutes;
  const fall = plusMinusM.map((now, mark) => (now ** 2 - option.plusMinusM[mark] ** 2) / slackM[mark] ** 2);
  const most = fall.indexOf(Math.max(...fall));
  const [now, then] = [plusMinusM[most], option.plusMinusM[most]].map(size);
  const down = gain < 0.005 ? 'by less than ½ %' : `by about ${Math.max(1, Math.round(100 * gain))} %`;
  const bring =
    now === then ? `leave guide ${most + 1} at ±${now}` : `bring guide ${most + 1} from ±${now} to ±${then}`;
  return `Ten more minutes ${bring} and the worst reading down ${down}.`;
}

function ruleInWords(
  { enough, farthest, plusMinusM, slackM, costOfKeeping }: NextReading,
  { size }: ReadingWording,
): string {
  const cost = `keeping these marks costs at most ${Math.round(100 * costOfKeeping)} % of the worst reading on 95 of 100 blanks that fit`;
  const widest = size(Math.max(...plusMinusM));
  switch (enough) {
    case 'within-slack':
      return 'Enough: the ± of every mark is within its slack. More readings would move no mark that matters.';
    case 'costs-little':
      return `Enough: ${cost}, and a twentieth is what slack allows.`;
    case 'buys-little':
      return `Enough: more readings hardly change the worst one; ${cost}.`;
    case 'moves-little':
      return `Enough of such readings: none on this list would, as a rule, move a mark by more than its slack. What is left, up to ±${widest}, they hardly see; ${cost}.`;
    default: {
      const { mark, movesM } = farthest;
      return `Not yet enough: a reading on this list would, as a rule, move guide ${mark + 1} by ${size(movesM)}; its slack is ±${size(slackM[mark])}. As they stand, ${cost}.`;
    }
  }
}

export const enoughRule =
  'Enough is said when every ± is within its slack, when keeping the marks costs no more than a twentieth of the worst reading on 95 of 100 blanks that fit, when ten more minutes would lower the worst reading by 2 % at most, or when no reading on the list would move a mark by more than its slack (root mean square over what it may show).';

function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
