/** What to do about a layout, in the bench's words: the deed first, why second, what it brings third. */

import type { GuideMove, KeptMarks, NextMove } from '../engine/flow/next-move.ts';
import type { WorstPlace } from '../engine/layout/worst.ts';
import { capital } from './capital.ts';
import { criterionWords, placeInWords } from './criteria.ts';
import { leadInWords, unreadInWords } from './lead.ts';
import type { Writer } from './writer.ts';

export interface NextMoveInWords {
  /** One sentence. */
  deed: string;
  why?: string;
  brings?: string;
}

export function nextMoveInWords(
  { code, now, move, fewest, kept }: NextMove,
  { count, loadsKg }: { count: number; loadsKg: readonly number[] },
  writer: Writer,
): NextMoveInWords {
  const help = { move, writer };
  const worst = `${readingInWords(now, loadsKg, writer)}.`;
  const why = capital(worst);
  switch (code) {
    case 'move':
      return { deed: `${moveInWords(help)}.`, why, brings: move && bringsInWords(move, writer) };
    case 'place-anew':
      return { deed: 'Place the guides for this blank: it does more than any one move.', why };
    case 'more-guides':
      return {
        deed: `Use ${fewest} guides: ${count} do not keep your limits.`,
        why,
        brings: move && orMove(help),
      };
    case 'beyond-limits':
      return {
        deed: 'No number of guides that was tried keeps your limits.',
        why,
        brings: [`Raise that limit, or test at a lighter load.`, move && orMove(help)]
          .filter(Boolean)
          .join(' '),
      };
    case 'as-even-as-it-gets':
      return {
        deed: 'Within your limits, and as even as this blank gets.',
        why: `Closest to a limit: ${worst}`,
      };
    case 'keep':
      return { deed: keptDeed(kept), why, brings: kept && whyKept(kept) };
    case 'no-bend':
      return { deed: 'One of the loads finds no bend. Take it off the ladder, or make it lighter.' };
  }
}

function keptDeed(kept: KeptMarks | undefined): string {
  const more = kept?.why === 'unread' ? 'hang a weight' : 'read more';
  if (kept?.marks === 'broken-start')
    return `The start breaks a rule. Place the guides to mend that, and ${more}.`;
  return `Keep ${kept?.marks === 'start' ? 'the start' : 'these marks'} for now, and ${more} first.`;
}

function whyKept({ why }: KeptMarks): string {
  return why === 'unread'
    ? `${unreadInWords} Blank says what to read.`
    : `${leadInWords(why)} Blank says which reading would tell.`;
}

function orMove(help: { move?: GuideMove; writer: Writer }): string {
  return `Of single moves this one helps most: ${moveInWords(help).replace(/^M/, 'm')}.`;
}

/** `Move guide 7 by 2 in toward the butt`: `guide 7 1⁄4 in` would be read as 7 1⁄4 in. */
function moveInWords({ move, writer }: { move?: GuideMove; writer: Writer }): string {
  if (!move) throw new Error('a move is said where there is one');
  const { guide, fromM, toM } = move;
  return `Move guide ${guide + 1} by ${writer.mark(Math.abs(toM - fromM))} toward the ${toM > fromM ? 'butt' : 'tip'}`;
}

function bringsInWords({ there, after }: GuideMove, writer: Writer): string {
  const figure = (value: number) => criterionWords[there.metric].figure(value, writer);
  const falls = `from ${figure(there.before)} to ${figure(there.after)}`;
  return `There it falls ${falls}. Closest to a limit then: ${placeInWords(after)}, ${besideLimit(after, writer)}.`;
}

/** `guide 8 at 400 g: line angle 17° of 15°`. */
export function readingInWords(worst: WorstPlace, loadsKg: readonly number[], writer: Writer): string {
  const words = besideLimit(worst, writer);
  return `${placeInWords(worst)} at ${writer.load(loadsKg[worst.load])}: ${criterionWords[worst.metric].name} ${words}`;
}

/** `17° of 15°`. */
export function besideLimit({ metric, value, limit }: WorstPlace, writer: Writer): string {
  const { figure } = criterionWords[metric];
  return `${figure(value, writer)} of ${figure(limit, writer)}`;
}
