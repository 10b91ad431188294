import { type BareAndFinished, type FinishEffects, finishEffects } from '../engine/flow/finish-effects.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { bare } from '../words/places.ts';
import type { Writer } from '../words/writer.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** At the builder's own marks where there are, else the proposed ones; a tenth of a kilogram where no load is found. */
export function finishOfWork({ bench, choices, work }: WorkedBuild): FinishEffects {
  const { blank, diameters, question, best } = work;
  const marks = question.ownFromTipM ?? best.fromTipM;
  return finishEffects({ bench, choices, blank, diameters, question }, marks, work.thirdLoadKg ?? 0.1);
}

/** What guides, thread and finish change; both ends where the wraps' stiffness decides. */
export function finishPart({ addedKg, firstHz, tipDropM, hungKg, worst }: FinishEffects, w: Writer): string {
  const percent = (ratio: number) => fixedDecimals(100 * ratio, 0);
  return [
    `Bare blank and finished rod: guides add ${w.mass(addedKg.guides)}, thread ${w.mass(addedKg.thread)}, finish ${w.mass(addedKg.finish)}. How much wraps stiffen is known as a range only: from a soft sleeve to every foot bonded to the blank.`,
    ...(firstHz ? [`  ${range('first frequency', firstHz, (hz) => fixedDecimals(hz, 2), 'Hz')}`] : []),
    `  ${range(`tip under ${w.mass(hungKg)}, level`, tipDropM, (dropM) => bare(w.tick(dropM)), `${w.units === 'inch' ? 'in' : 'mm'} down`)}`,
    `  ${range('worst of the marks', worst, percent, '% of its limit')}`,
  ].join('\n');
}

function range(
  name: string,
  { bare, loose, bonded }: BareAndFinished,
  write: (value: number) => string,
  unit: string,
): string {
  const ends = [loose, bonded].sort((a, b) => a - b).map(write);
  const finished = ends[0] === ends[1] ? ends[0] : `${ends[0]} to ${ends[1]}`;
  return `${name}: bare ${write(bare)}, finished ${finished} ${unit}`;
}
