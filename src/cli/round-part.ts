import { proposeSpiral, type SpiralProposal } from '../engine/flow/propose-spiral.ts';
import { type HandRow, handsAnswer, type RoundAtLoad, roundAnswer } from '../engine/flow/round-answer.ts';
import {
  gripsQuestion,
  handsQuestion,
  type LaidBuild,
  roundQuestion,
  spiralQuestion,
} from '../engine/flow/round-questions.ts';
import type { Arrangement, Handling } from '../engine/flow/torque-in-hand.ts';
import { type TwoGripsAtLoad, twoGrips } from '../engine/flow/two-grips.ts';
import { rodKindOf } from '../engine/kinds/rod-kinds.ts';
import { arrangementNames, handCellInWords, handlingNames } from '../words/hands.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import { clearInWords, handInWords, spiralInWords, torsionInWords, turnInWords } from '../words/round.ts';
import { lowerHandInWords, twoGripsInWords, upperHandInWords } from '../words/two-grips.ts';
import { textTable } from './text-table.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** In space and in the hands, as the page's Layout step says it. */
export interface RoundOfWork {
  /** Left out for a fly rod whose guides stand on one side. */
  round?: { loads: RoundAtLoad[]; hands: HandRow[]; angles?: SpiralProposal };
  /** Left out for a rod that one hand holds. */
  grips?: TwoGripsAtLoad[];
}

/** At the marks that stand. */
export function roundOfWork({ bench, choices, work }: WorkedBuild): RoundOfWork {
  const { question, standing, diameters } = work;
  const laid: LaidBuild = {
    handle: bench.handle,
    choices,
    diameters,
    ladder: question.request,
    torsion: question.torsion,
    fromTipM: standing.fromTipM,
  };
  const grips = gripsQuestion(laid);
  const angles = spiralQuestion(laid);
  const asksRound = !rodKindOf(choices.rodKind).flyLine || choices.spiral !== undefined;
  return {
    ...(asksRound
      ? {
          round: {
            loads: roundAnswer(roundQuestion(laid)),
            hands: handsAnswer(handsQuestion(laid)),
            angles: angles && proposeSpiral(angles),
          },
        }
      : {}),
    ...(grips ? { grips: twoGrips(grips) } : {}),
  };
}

/** Empty for a rod that has none of it. */
export function roundPart(worked: WorkedBuild, { round, grips }: RoundOfWork, w: LadderWriter): string {
  const parts = [round ? roundLines(worked, round, w) : [], grips ? gripLines(grips, w) : []];
  return parts.flat().join('\n');
}

function roundLines(
  { choices, work }: WorkedBuild,
  { loads, hands, angles }: NonNullable<RoundOfWork['round']>,
  w: LadderWriter,
): string[] {
  const spiral = choices.spiral !== undefined;
  if (loads.some(({ status }) => status !== 'converged')) {
    return ['Guides round the blank: no bend was found at one of the loads.'];
  }
  const said = [
    clearInWords(loads, spiral, w),
    ...(spiral ? [turnInWords(loads, work.question.request.limits, w)] : []),
    handInWords(loads, w),
    torsionInWords(work.question.torsion),
  ];
  const advice = angles && spiralInWords(angles, w);
  return [
    `Guides round the blank: ${said.join(' ')}`,
    ...(advice ? [`Angles: ${advice.deed} ${advice.why}`] : []),
    'Torque that your hand holds, then the twist of the tip; no promise that a rod will or will not roll over:',
    handTable(hands, w),
  ];
}

function handTable(hands: readonly HandRow[], w: LadderWriter): string {
  const arrangements = Object.keys(arrangementNames) as Arrangement[];
  const rows = w.loads.flatMap((name, load) =>
    (Object.keys(handlingNames) as Handling[]).map((handling) => [
      name,
      handlingNames[handling],
      ...arrangements.map((arrangement) => handCellInWords(hands, { arrangement, handling, load }, w)),
    ]),
  );
  return textTable(['load', 'held', ...arrangements.map((one) => arrangementNames[one])], rows, [
    'end',
    'start',
    ...arrangements.map(() => 'start' as const),
  ]);
}

function gripLines(grips: readonly TwoGripsAtLoad[], w: LadderWriter): string[] {
  const rows = grips.map((at, load) => [
    w.loads[load],
    lowerHandInWords(at, w),
    upperHandInWords(at, w),
    w.torque(Math.abs(at.momentNm)),
  ]);
  return [
    `Held with both hands: ${twoGripsInWords(grips, w)}`,
    textTable(
      ['load', 'lower hand', 'upper hand', 'moment held'],
      rows,
      rows[0].map(() => 'end' as const),
    ),
  ];
}
