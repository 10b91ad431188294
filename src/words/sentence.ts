import type { Reason } from '../engine/finding.ts';
import { benchSentences } from './findings/bench.ts';
import { bendSentences } from './findings/bend.ts';
import { finishSentences } from './findings/finish.ts';
import { fitSentences } from './findings/fit.ts';
import { frequencySentences } from './findings/frequency.ts';
import { guideSentences } from './findings/guides.ts';
import { handleSentences } from './findings/handle.ts';
import { imageSentences } from './findings/image.ts';
import { inputSentences } from './findings/input.ts';
import { kindsSentences } from './findings/kinds.ts';
import { layoutSentences } from './findings/layout.ts';
import { joinSentences } from './findings/load-test.ts';
import { marksSentences } from './findings/marks.ts';
import { printerSentences } from './findings/printer.ts';
import { assumedSentences, recordSentences } from './findings/record.ts';
import { repairSentences } from './findings/repair.ts';
import { rotationSentences } from './findings/rotation.ts';
import { roundSentences } from './findings/round.ts';
import type { Sentences } from './findings/sentences.ts';
import { daysSentences, seriesSentences } from './findings/series.ts';
import { spoolSentences } from './findings/spool.ts';
import { standSentences } from './findings/stand.ts';
import { torsionSentences } from './findings/torsion.ts';
import { quantitySentences } from './findings/units.ts';
import { wrapSentences } from './findings/wraps.ts';
import type { Writer } from './writer.ts';

/** Every kind of finding that the engine knows, by its code. */
export const allSentences: Sentences<Record<string, never>> = {
  ...benchSentences,
  ...bendSentences,
  ...finishSentences,
  ...fitSentences,
  ...frequencySentences,
  ...guideSentences,
  ...handleSentences,
  ...imageSentences,
  ...inputSentences,
  ...layoutSentences,
  ...joinSentences,
  ...marksSentences,
  ...printerSentences,
  ...assumedSentences,
  ...recordSentences,
  ...repairSentences,
  ...rotationSentences,
  ...seriesSentences,
  ...daysSentences,
  ...quantitySentences,
  ...wrapSentences,
  ...kindsSentences,
  ...spoolSentences,
  ...roundSentences,
  ...torsionSentences,
  ...standSentences,
} as Sentences<Record<string, never>>;

/** Whether there is a sentence for it; a file that was edited by hand or by a later version may hold others. */
export function isSaid({ code }: Reason): boolean {
  return Object.hasOwn(allSentences, code);
}

/** A finding, or a reason, as a sentence in the reader's units. */
export function sentenceOf({ code, values }: Reason, writer: Writer): string {
  const say = allSentences[code];
  if (!say) throw new Error(`no sentence is written for the finding "${code}"`);
  return say(values as never, writer);
}
