/** What to read next, and when it is enough, in the bench's words. */

import type { WeighedOption } from '../engine/sureness/enough.ts';
import type { Settles } from '../engine/sureness/lead.ts';
import type { NextReading } from '../engine/sureness/next-reading.ts';
import type { ReadingOption } from '../engine/sureness/reading-option.ts';
import { capital } from './capital.ts';
import { leadInWords } from './lead.ts';
import type { Writer } from './writer.ts';

/** `Set the clamp 27 in from the tip. With nothing hung, then with 25 g, read the drop at the tip.` */
export function readingInWords(option: ReadingOption, w: Writer): string {
  const { standing, clampFromTipM, turnedRad, loads, swings, supportsFromTipM } = option;
  if (swings)
    return `Hold the bare blank ${w.place(clampFromTipM)} from the tip and let the tip swing a hand’s width. Time ${swings.count} swings, there and back: about ${swings.seconds.toFixed(0)} s.`;
  if (supportsFromTipM) {
    const [a, b] = supportsFromTipM.map(w.place);
    const [at, kg] = [w.place(loads[0].readFromTipM[0]), loads[loads.length - 1].massKg];
    return `Lay the blank on two supports, ${a} and ${b} from the tip. Draw a thread over both. With nothing hung, then with ${w.load(kg)} at ${at}, read the sag there below the thread, to ${w.fine(0.0005)}.`;
  }
  const turned = turnedRad === 0 || standing !== undefined ? '' : ', the blank turned half over';
  const where =
    standing === undefined
      ? `Set the clamp ${w.place(clampFromTipM)} from the tip${turned}.`
      : 'Leave the clamp as it is.';
  const hang = loads.map(({ massKg }) => (massKg > 0 ? `with ${w.load(massKg)}` : 'with nothing hung'));
  const stations = listed(loads[0].readFromTipM.map((at) => (at === 0 ? 'the tip' : w.place(at))));
  const sentence = `${hang.join(', then ')}, read the drop at ${stations}.`;
  return `${where} ${capital(sentence)}`;
}

/** `This narrows guide 4 most: from ±41 mm to ±29 mm (slack ±6 mm).` */
export function narrowingInWords(
  option: WeighedOption,
  { plusMinusM, slackM }: NextReading,
  w: Writer,
): string {
  const fall = plusMinusM.map((now, mark) => (now ** 2 - option.plusMinusM[mark] ** 2) / slackM[mark] ** 2);
  const most = fall.indexOf(Math.max(...fall));
  const [now, then, slack] = [plusMinusM[most], option.plusMinusM[most], slackM[most]].map(w.tick);
  if (now === then && option.settles)
    return `It narrows no mark: guide ${most + 1} stays at ±${now} (slack ±${slack}).`;
  if (now === then)
    return `Even the best on the list tells little: guide ${most + 1} stays at ±${now} (slack ±${slack}).`;
  const little = !option.settles && option.plusMinusM[most] > smallShare * plusMinusM[most];
  const words = `narrows guide ${most + 1} most: from ±${now} to ±${then} (slack ±${slack}).`;
  return little ? `Even the best on the list tells little: it ${words}` : `This ${words}`;
}

/** A ± that falls by less than a tenth has hardly fallen. */
const smallShare = 0.9;

/** What the marks are known to where it matters, before and after the reading that tells most. */
export interface Bought {
  /** Index of the mark whose ± is widest for its slack. */
  mark: number;
  nowM: number;
  thenM: number;
  slackM: number;
  /** Drops, sags or counts to be taken for it. */
  readings: number;
}

/** Undefined where nothing is on offer, or every mark is held. */
export function boughtByNext({ plusMinusM, slackM, options }: NextReading): Bought | undefined {
  const [best] = options;
  if (!best) return undefined;
  const wide = plusMinusM.map((now, mark) => now / slackM[mark]);
  const mark = wide.indexOf(Math.max(...wide));
  if (!(plusMinusM[mark] > 0)) return undefined;
  return {
    mark,
    nowM: plusMinusM[mark],
    thenM: best.plusMinusM[mark],
    slackM: slackM[mark],
    readings: best.readings,
  };
}

/** `Marks now known to ±3/4 in where it matters (guide 4, which may move ±1/2 in); two more readings: ±1/2 in.` */
export function boughtInWords({ mark, nowM, thenM, slackM, readings }: Bought, w: Writer): string {
  const [now, then] = [nowM, thenM].map(w.tick);
  const more = readings === 1 ? 'one more reading' : `${readings} more readings`;
  const known = `Marks now known to ±${now} where it matters (guide ${mark + 1}, which may move ±${w.tick(slackM)})`;
  return now === then ? `${known}; ${more} would not narrow that.` : `${known}; ${more}: ±${then}.`;
}

/** The rule that ended it, with its numbers; where it has not, what is still to be had. */
export function enoughInWords(next: NextReading, w: Writer): string {
  const ten = tenMinutesInWords(next, w);
  return ten ? `${ruleInWords(next, w)} ${ten}` : ruleInWords(next, w);
}

/**
 * `Ten more minutes bring guide 4 from ±41 mm to ±29 mm and the worst reading down by about 1 %.` Where the start
 * stays: `Ten more minutes move the marks about 3 times in 10. Then the worst reading falls by about 8 %.`
 */
function tenMinutesInWords({ tenMinutes, plusMinusM, slackM }: NextReading, w: Writer): string | undefined {
  if (!tenMinutes) return undefined;
  const { option, gain } = tenMinutes;
  if (option.settles) return settlingInWords(option.settles);
  const fall = plusMinusM.map((now, mark) => (now ** 2 - option.plusMinusM[mark] ** 2) / slackM[mark] ** 2);
  const most = fall.indexOf(Math.max(...fall));
  const [now, then] = [plusMinusM[most], option.plusMinusM[most]].map(w.tick);
  const down = gain < 0.005 ? 'by less than ½ %' : `by about ${Math.max(1, Math.round(100 * gain))} %`;
  const bring =
    now === then ? `leave guide ${most + 1} at ±${now}` : `bring guide ${most + 1} from ±${now} to ±${then}`;
  return `Ten more minutes ${bring} and the worst reading down ${down}.`;
}

function settlingInWords({ chance, gain }: Settles): string {
  if (chance < 0.05) return 'Ten more minutes move the marks less than 1 time in 20.';
  const tenths = Math.max(1, Math.round(10 * chance));
  const times =
    chance < 0.1
      ? 'less than 1 time in 10'
      : tenths === 10
        ? 'almost every time'
        : `about ${tenths} ${tenths === 1 ? 'time' : 'times'} in 10`;
  const percent = Math.max(1, Math.round((100 * gain) / chance));
  return `Ten more minutes move the marks ${times}. Then the worst reading falls by about ${percent} %.`;
}

function ruleInWords(
  { enough, farthest, plusMinusM, slackM, costOfKeeping, unsure }: NextReading,
  w: Writer,
): string {
  const cost = `These marks cost at most ${w.percent(costOfKeeping)} of the worst reading, 19 times in 20.`;
  switch (enough) {
    case 'within-slack':
      return 'Enough readings: every mark’s ± is within its slack. More would move no mark that matters.';
    case 'costs-little':
      return `Enough readings. ${cost}`;
    case 'buys-little':
      return `Enough readings: ten more minutes would hardly change the worst one. ${cost}`;
    case 'settles-little':
      return `Keep the start: more of such readings would hardly show other marks to be better. ${unsureInWords(unsure)}`;
    case 'moves-little':
      return `Enough of such readings: none on this list would move a mark past its slack. They hardly see what is left, up to ±${w.tick(Math.max(...plusMinusM))}. ${cost}`;
    default: {
      if (unsure)
        return `Keep the start for now, but no thread yet: other marks may be better. ${unsureInWords(unsure)}`;
      const { mark, movesM } = farthest;
      return `Enough for a first layout, not yet for thread. A reading on this list would move guide ${mark + 1} by about ${w.tick(movesM)}; its slack is ±${w.tick(slackM[mark])}. ${cost}`;
    }
  }
}

function unsureInWords(unsure: NextReading['unsure']): string {
  return unsure ? leadInWords(unsure) : '';
}

export const enoughRule =
  'It is enough when every ± is within its slack. Or when these marks cost no more than a twentieth of the worst reading, on 95 of 100 blanks that fit. Or when ten more minutes would lower the worst reading by 2 % at most. Or when no reading on the list would move a mark past its slack (root mean square of what it may show). Where the start is kept because other marks lose too often or too much, it is enough when ten more minutes change that less than 1 time in 10.';

function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
