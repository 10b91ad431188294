import { type FinishEffects, finishEffects } from '../engine/flow/finish-effects.ts';
import { addedInWords, finishedRows } from '../words/finished-rod.ts';
import type { Writer } from '../words/writer.ts';
import type { WorkedBuild } from './work-build-file.ts';

export function finishOfWork({ bench, choices, work }: WorkedBuild): FinishEffects {
  const { blank, diameters, question, standing } = work;
  const { rod, request: ladder } = question;
  return finishEffects({ bench, choices, blank, diameters, rod, ladder }, standing.fromTipM);
}

/** What guides, thread and finish change. */
export function finishPart(effects: FinishEffects, w: Writer): string {
  const rows = finishedRows(effects, w).map(
    ({ name, bare, finished }) => `  ${name}: bare ${bare}, finished ${finished}`,
  );
  return [`Bare blank and finished rod: ${addedInWords(effects, w)}`, ...rows].join('\n');
}
