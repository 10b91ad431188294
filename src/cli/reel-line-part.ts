import { type ReelLineAnswer, readReelLine } from '../engine/flow/reel-line.ts';
import { type ReelLineQuestion, reelLineQuestion } from '../engine/flow/reel-line-question.ts';
import { typicalRings } from '../engine/flow/rings-on-hand.ts';
import { guideName } from '../engine/kinds/guides.ts';
import { dragInWords } from '../words/drag.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import { bare } from '../words/places.ts';
import { fanInWords, meetingInWords, stepInWords } from '../words/reel-line.ts';
import type { WorkedBuild } from './work-build-file.ts';

export interface ReelLineOfWork {
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
}

/** With rings of typical sizes. */
export function reelLineOfWork({ bench, choices, work }: WorkedBuild): ReelLineOfWork | undefined {
  const { blank, diameters, question, standing } = work;
  const asked = reelLineQuestion({
    handle: bench.handle,
    choices,
    blank,
    diameters,
    ladder: question.request,
    fromTipM: standing.fromTipM,
    onHand: typicalRings(choices, blank.lengthM),
  });
  return asked && !('needs' in asked) ? { question: asked, answer: readReelLine(asked) } : undefined;
}

/** Empty for a fly rod; what is still to be measured where there is no fan yet. */
export function reelLinePart(
  { choices, work }: WorkedBuild,
  read: ReelLineOfWork | undefined,
  w: LadderWriter,
): string {
  if (!choices.line) return '';
  const { dragKg, reel } = choices.line;
  const drag = dragKg === undefined ? [] : [dragInWords(dragKg, work.question.loads.kg, w)];
  if (!read) {
    const what = reel.kind === 'fixed spool' ? 'the spool’s lip' : 'how far the level-wind moves';
    return [`The line off the reel: measure ${what} to see it.`, ...drag].join('\n');
  }
  const { question, answer } = read;
  const { deed, why } = fanInWords(question, answer, w);
  const meeting = meetingInWords(question, answer, w);
  return [
    `The line off the reel: ${deed} ${why}`,
    ...(meeting ? [meeting] : []),
    ...stepLines(read),
    ...loadLines(answer, w),
    ...drag,
  ].join('\n');
}

function stepLines({ answer }: ReelLineOfWork): string[] {
  return answer.steps.map((step) => {
    const size = step.already ? 'stays as it is' : step.ring ? `${guideName(step.ring)}` : 'no ring';
    return `  guide ${step.guide + 1}: ${size}; ${stepInWords(step)}`;
  });
}

function loadLines({ loads }: ReelLineAnswer, w: LadderWriter): string[] {
  return loads.map((load, i) => {
    if (!load) return `  ${w.loads[i]}: no bend found`;
    const { lineAngleRad: turn, clearanceM, over } = load;
    const clear = clearanceM > 0 ? `clears the ${over} by ${w.fine(clearanceM)}` : `touches the ${over}`;
    return `  ${w.loads[i]}: turns ${bare(w.angle(turn.least))} to ${w.angle(turn.largest)} in the first guide, ${clear}`;
  });
}
