/**
 * The work of a build in pieces that fit on a tablet beside the vice: one thing to do, one figure to read.
 * Nothing here is stored but that a piece was ticked off; the pieces follow from the plans of the other steps.
 */
import type { AssembledBlank } from '../engine/bench/assemble.ts';
import type { BatchPlan } from '../engine/finish/batches.ts';
import type { SortedBag } from '../engine/guides/bag-sorting.ts';
import type { HandlePlan } from '../engine/handle/plan-handle.ts';
import type { MarkRound } from '../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import type { Wrap } from '../engine/wraps/plan-wraps.ts';
import type { BenchPiece } from './bench-piece.ts';
import { markRoundInWords } from './round.ts';
import { wrapName } from './wrap-name.ts';
import type { Writer } from './writer.ts';

export interface BenchTask {
  /** Stays the same while the work does: `wrap-guide-3-tip-side`. */
  id: string;
  /** The build's step where it belongs. */
  stage: string;
  title: string;
  /** What is read while the hands work. */
  figure: string;
  lines: string[];
  /** What its drawing shows; left out where nothing would be seen. */
  piece?: BenchPiece;
  /** It cannot be undone: it is ticked where its gate stands, never here. */
  gate?: boolean;
}
export interface BenchWork {
  blank: AssembledBlank;
  /** To read from the tape. */
  step: TapeStep;
  writer: Writer;
  handle?: HandlePlan;
  /** Marks by section, from the tip: guide's number, its name, from the section's own tip end and butt end. */
  marks: readonly {
    guide: number;
    name: string;
    section: number;
    ownTipM: number;
    ownButtM: number;
    round?: MarkRound;
  }[];
  rack?: { sorted: SortedBag; numberOf(bagId: string): number };
  wraps: readonly Wrap[];
  trimTurnsWord: string;
  batch?: BatchPlan;
}

import { batchParts } from './batch.ts';

/** In the order of the craft. */
export function benchTasks(work: BenchWork): BenchTask[] {
  return [
    ...handleTasks(work),
    ...markTasks(work),
    ...rackTasks(work),
    ...wrapTasks(work),
    ...finishTasks(work),
  ];
}

function handleTasks({ handle, step, writer }: BenchWork): BenchTask[] {
  if (!handle) return [];
  const deepestM = Math.max(...handle.reaming.map(({ stopAtM, depthM }) => stopAtM ?? depthM));
  const reaming = handle.reaming.map(
    ({ widthM, depthM, stopAtM }, index): BenchTask => ({
      id: `ream-${index + 1}`,
      stage: 'handle',
      title: `Ream the grip, step ${index + 1} of ${handle.reaming.length}`,
      figure: `${writer.calliper(widthM)} wide`,
      lines: [
        depthM > 0 ? `Down to ${writer.length(depthM)} from the butt face.` : 'At the butt face only.',
        stopAtM === undefined
          ? 'Turn, do not plunge. Try it on the blank in between.'
          : `Stop the reamer at ${writer.length(stopAtM)} and ease the rest by hand.`,
      ],
      piece: { kind: 'bore', depthM: stopAtM ?? depthM, deepestM },
    }),
  );
  const reachM = Math.max(...handle.arbors.map(({ toM }) => toM));
  const arbors = handle.arbors.map(
    ({ fromM, toM, gapM }, index): BenchTask => ({
      id: `arbor-${index + 1}`,
      stage: 'handle',
      title: `Arbor ${index + 1} of ${handle.arbors.length}`,
      figure: `${formatOnTape(fromM, step)} to ${formatOnTape(toM, step)}`,
      lines: ['From the butt end of the blank.', `Build it up by ${writer.calliper(gapM)} all round.`],
      piece: { kind: 'arbor', fromM, toM, reachM },
    }),
  );
  const glue: BenchTask = {
    id: 'glue',
    stage: 'handle',
    title: 'Glue seat, grip and check',
    figure: 'dry fit first',
    lines: ['Seat, guides and tip-top on one line. Tick the four checks on the handle’s sheet.'],
    gate: true,
  };
  const tipTop: BenchTask = {
    id: 'glue-tip-top',
    stage: 'handle',
    title: 'Glue the tip-top',
    figure: `${handle.tipTube.best.size64}/64 in`,
    lines: ['On the guides’ line, sighted from both ends. Tick it on the handle’s sheet.'],
    gate: true,
  };
  return [...reaming, ...arbors, glue, tipTop];
}

function markTasks({ marks, blank, step }: BenchWork): BenchTask[] {
  return marks.map(({ guide, name, section, ownTipM, ownButtM, round }) => ({
    id: `mark-${guide}`,
    stage: 'marks',
    title: `Mark guide ${guide}, ${name}`,
    figure: formatOnTape(ownTipM, step),
    lines: [
      `On ${blank.sections[section].name}, from its tip end.`,
      `From its butt end ${formatOnTape(ownButtM, step)}: both must meet.`,
      ...(round ? [`Round the blank, seen from behind the butt: ${markRoundInWords(round, step)}.`] : []),
    ],
    piece: { kind: 'place', section, fromOwnTipM: ownTipM, toOwnTipM: ownTipM },
  }));
}

function rackTasks({ rack, marks }: BenchWork): BenchTask[] {
  if (!rack || rack.sorted.places.every(({ bagId }) => bagId === undefined)) return [];
  return rack.sorted.places.map(({ guide, size, bagId }) => ({
    id: `rack-${guide}`,
    stage: 'guides',
    title: `Lay out guide ${guide}`,
    figure: bagId === undefined ? 'order one' : `number ${rack.numberOf(bagId)}`,
    lines: [`Size ${size}. Plating, ring, ramp, flat underside, no burr.`],
    piece: placeOfGuide(marks, guide),
  }));
}

function placeOfGuide(marks: BenchWork['marks'], guide: number): BenchPiece | undefined {
  const mark = marks.find((one) => one.guide === guide);
  return mark && { kind: 'place', section: mark.section, fromOwnTipM: mark.ownTipM, toOwnTipM: mark.ownTipM };
}

function wrapTasks({ wraps, blank, step, writer, trimTurnsWord }: BenchWork): BenchTask[] {
  return wraps.map((wrap) => ({
    id: `wrap-${wrapName(wrap.id)
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')}`,
    stage: 'wraps',
    title: `Wrap: ${wrapName(wrap.id)}`,
    figure: `${formatOnTape(wrap.startFromOwnTipM, step)} to ${formatOnTape(wrap.endFromOwnTipM, step)}`,
    lines: [
      `On ${blank.sections[wrap.section].name}, from its tip end. From its butt end it starts at ${formatOnTape(wrap.startFromOwnButtM, step)}.`,
      `${writer.fine(wrap.toTipM - wrap.fromTipM)}, ${Math.round(wrap.turns)} turns${wrap.trimTurns > 0 ? `, ${wrap.trimTurns / 2} of them ${trimTurnsWord} at each end` : ''}${wrap.underwrapM > 0 ? `, over an underwrap of ${writer.fine(wrap.underwrapM)}` : ''}.`,
    ],
    piece: {
      kind: 'place',
      section: wrap.section,
      fromOwnTipM: wrap.startFromOwnTipM,
      toOwnTipM: wrap.endFromOwnTipM,
    },
  }));
}

function finishTasks({ batch, wraps }: BenchWork): BenchTask[] {
  if (!batch || wraps.length === 0) return [];
  return [
    {
      id: 'coat',
      stage: 'finish',
      title: 'Mix and brush a coat',
      figure: batchParts(batch),
      lines: [
        batch.batches > 1 ? `${batch.batches} batches one after the other.` : 'One batch for the whole rod.',
        'Sight the guides once more: after this you cannot move them. Tick and clock are on the finish’s sheet.',
      ],
      gate: true,
    },
  ];
}
