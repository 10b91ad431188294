import { coatSchedule, type Due, recoatAt } from '../../../engine/finish/schedule.ts';
import type { FinishChoices } from '../../../record/read-finish.ts';
import { clockWords } from '../../../words/intl.ts';

export interface NextOnFinish {
  words: string;
  /** Path key of the field to go to. */
  at?: string;
  /** The step to go on to. */
  goOn?: 'layout' | 'papers';
}

type FinishNow = Pick<FinishChoices, 'coats' | 'times' | 'coatsInAll'> & { batch: unknown };

/** What to do next, coat by coat; `open`: what is still to be looked at before a coat goes on. */
export function nextOnFinish(finish: FinishNow, nowMs: number, open: readonly string[]): NextOnFinish {
  const { coats, times, coatsInAll, batch } = finish;
  const last = coats.at(-1);
  if (!last) {
    if (!batch) return { words: 'Place and wrap the guides first.', goOn: 'layout' };
    return open.length > 0
      ? {
          words: 'Look at the four things below, mix, and brush the first coat on.',
          at: `finish/-/${open[0]}`,
        }
      : { words: 'Mix, and brush the first coat on.' };
  }
  const due = new Map<Due, number>(
    coatSchedule(last.brushedAtMs, times, { roomC: last.roomC, latest: true }).map(({ due, atMs }) => [
      due,
      atMs,
    ]),
  );
  const isPast = (what: Due) => (due.get(what) ?? 0) <= nowMs;
  const clock = (what: Due) => clockWords(due.get(what) ?? 0, nowMs);
  if (!isPast('stop-turning')) {
    return { words: `Keep it turning until ${clock('stop-turning')}. The alarms show on every sheet.` };
  }
  if (coats.length < coatsInAll)
    return { words: nextCoat(coats.length + 1, recoatAt(nowMs, last, times), nowMs) };
  if (!isPast('fish')) {
    return {
      words: `All coats are on. Let them cure until ${clock('fish')}; then inspect the rod.`,
      goOn: 'papers',
    };
  }
  return { words: 'The finish is cured. Inspect the rod, and hand it over.', goOn: 'papers' };
}

function nextCoat(
  coat: number,
  { status, fromMs, untilMs }: ReturnType<typeof recoatAt>,
  nowMs: number,
): string {
  switch (status) {
    case 'too-early':
      return `Wait. Coat ${coat} may go on from ${clockWords(fromMs, nowMs)}.`;
    case 'now':
      return `Brush coat ${coat} on before ${clockWords(untilMs, nowMs)}.`;
    case 'sand-first':
      return `Scuff with 400 to 600 grit, then brush coat ${coat} on.`;
  }
}
