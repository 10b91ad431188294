import { judgeRod } from '../engine/load-test/judge-rod.ts';
import { benchFit } from '../engine/stiffness/from-bench.ts';
import { judgeQuestion } from '../record/judge-question.ts';
import {
  angleInWords,
  contradictedWords,
  gainInWords,
  moveInWords,
  offMarks,
  spiralInPhotoWords,
  withheldInWords,
} from '../words/judging.ts';
import { sentenceOf } from '../words/sentence.ts';
import type { OpenBuild } from './open-build.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** What the last photographed test of the taped-up rod says; empty where there is none. */
export function judgePart({ bench, choices, work }: WorkedBuild, { loadTests, writer }: OpenBuild): string {
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
  const head = `The photographed load test of ${last.test.madeAt.slice(0, 10)}, ${writer.load(last.test.hungKg ?? 0)}:`;
  if (choices.spiral) return `${head}\n  ${spiralInPhotoWords}`;
  const judged = judgeRod(last.question);
  if (judged.status !== 'judged')
    return `${head}\n  It could not be judged. ${judged.reason ? sentenceOf(judged.reason, writer) : ''}`;
  const angles = judged.rings.flatMap(({ lineAngle }, ring) =>
    lineAngle?.limit === undefined ? [] : [`guide ${ring} ${angleInWords(lineAngle.seen, writer)}`],
  );
  const { moves, withheld, contradicted } = judged;
  const none = withheld
    ? withheldInWords(withheld, writer)
    : 'No move is proposed: not every load has an answer.';
  return [
    head,
    `  line angle seen: ${angles.join(', ')}`,
    ...offMarks(judged, writer).map(({ words }) => `  ${words}`),
    ...(contradicted ? [`  ${contradictedWords}`] : []),
    ...(moves?.moves ?? []).map((move) => `  move ${moveInWords(move, writer)}`),
    `  ${moves ? gainInWords(moves, writer) : none}`,
  ].join('\n');
}
