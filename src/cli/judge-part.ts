import { judgeRod } from '../engine/load-test/judge-rod.ts';
import { benchFit } from '../engine/stiffness/from-bench.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import { judgeQuestion } from '../record/judge-question.ts';
import { angleInWords, gainInWords, moveInWords, offMarks, withheldInWords } from '../words/judging.ts';
import type { OpenBuild } from './open-build.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** What the last photographed test of the taped-up rod says; empty where there is none. */
export function judgePart(
  { bench, choices, work }: WorkedBuild,
  { loadTests }: OpenBuild,
  length: (lengthM: number) => string,
): string {
  const { request, ownFromTipM } = work.question;
  if (!ownFromTipM) return '';
  const fit = benchFit(bench).request;
  const parts = { fit, request, choices, marksFromTipM: ownFromTipM };
  const questions = loadTests.flatMap((test) => {
    const question = judgeQuestion(test, parts);
    return question ? [{ test, question }] : [];
  });
  const last = questions.at(-1);
  if (!last) return '';
  const judged = judgeRod(last.question);
  const head = `The photographed load test of ${last.test.madeAt.slice(0, 10)}, ${formatGrams(last.test.hungKg ?? 0, 0)}:`;
  if (judged.status !== 'judged') return `${head}\n  could not be judged: ${judged.reason}`;
  const angles = judged.rings.flatMap(({ lineAngle }, ring) =>
    lineAngle?.limit === undefined ? [] : [`guide ${ring} ${angleInWords(lineAngle.seen)}`],
  );
  const { moves, withheld, contradicted } = judged;
  const none = withheld
    ? withheldInWords(withheld, length)
    : 'Under some load this rod finds no bend: no move is proposed.';
  return [
    head,
    `  line angle seen: ${angles.join(', ')}`,
    ...offMarks(judged, length).map(({ words }) => `  ${words}`),
    ...(contradicted
      ? ['  Bench and photograph do not belong to one blank; the bench counts with four times its ±.']
      : []),
    ...(moves?.moves ?? []).map((move) => `  move ${moveInWords(move, length)}`),
    `  ${moves ? gainInWords(moves) : none}`,
  ].join('\n');
}
