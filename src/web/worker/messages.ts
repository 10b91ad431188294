/** What the page and the engine's worker say to each other: plain, cloneable data in SI units. */
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import type { CountsAnswer } from '../../engine/flow/count-answer.ts';
import type { FinishEffects } from '../../engine/flow/finish-effects.ts';
import type { MoveQuestion, NextMove } from '../../engine/flow/next-move.ts';
import type { Power } from '../../engine/flow/power.ts';
import type { SpiralProposal } from '../../engine/flow/propose-spiral.ts';
import type { ReelLineAnswer } from '../../engine/flow/reel-line.ts';
import type { HandRow, RoundAtLoad } from '../../engine/flow/round-answer.ts';
import type { TwoGripsAtLoad } from '../../engine/flow/two-grips.ts';
import type { LadderRequest } from '../../engine/layout/ladder-request.ts';
import type { LayoutAnswer, LayoutProgress } from '../../engine/layout/layout.ts';
import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import type { RealLineAtLoad } from '../../engine/layout/real-line.ts';
import type { OutsideDiameter, RuledReading } from '../../engine/layout/rule-reading.ts';
import type { MarkSlack } from '../../engine/layout/slack.ts';
import type { LaidMarks } from '../../engine/layout/slack-of-layout.ts';
import type { JudgeAnswer } from '../../engine/load-test/rod-judgement.ts';
import type { FitAnswer, FitRequest } from '../../engine/stiffness/request.ts';
import type { DaysAnswer } from '../../engine/sureness/compare-days.ts';
import type { MarkSpread } from '../../engine/sureness/mark-spread.ts';
import type { NextReading } from '../../engine/sureness/next-reading.ts';
import type { Sureness } from '../../engine/sureness/sureness.ts';
import type { DoubtTask, SecondAnswer, SeriesAnswer } from './doubt-messages.ts';

/** A rod with its loads and limits: what stays the same while guides move. Compared by identity. */
export interface LadderSheet {
  ladder: LadderRequest;
  diameters: readonly OutsideDiameter[];
}

/** Reads one layout. Each thread keeps its ladder, and its bends to start the next reading from. */
export interface ReadTask {
  does: 'read';
  thread: string;
  /** Left out: the one that this thread had before. */
  sheet?: LadderSheet;
  fromTipM: readonly number[];
}
export interface FitTask {
  does: 'fit';
  request: FitRequest;
}
export interface LayoutTask {
  does: 'layout';
  /** On the likeliest blank. */
  request: LayoutRequest;
  /** What the blank was fitted from; left out where nothing was read. */
  fit?: FitRequest;
}
/** How far each mark of a layout, whoever placed it, may move before its worst reading grows by a twentieth. */
export interface SlackTask extends LaidMarks {
  does: 'slack';
}

/** What to do first about a layout. */
export interface NextMoveTask {
  does: 'nextMove';
  question: MoveQuestion;
  /** Ends of moves are rounded to this. */
  snapM: number;
}

/** Tasks of more than a frame. */
export type LongTask = FitTask | LayoutTask | SlackTask | NextMoveTask | DoubtTask;
export type Task = ReadTask | LongTask;

interface Answers {
  read: RuledReading;
  fit: FitAnswer;
  layout: LayoutAnswer;
  slack: MarkSlack[];
  nextMove: NextMove;
  counts: CountsAnswer;
  blanks: BlankTables[];
  sureness: Sureness;
  spread: MarkSpread;
  power: Power;
  finished: FinishEffects;
  nextReading: NextReading;
  judge: JudgeAnswer;
  second: SecondAnswer;
  days: DaysAnswer;
  series: SeriesAnswer;
  realLine: RealLineAtLoad[];
  reelLine: ReelLineAnswer;
  round: RoundAtLoad[];
  spiral: SpiralProposal | undefined;
  hands: HandRow[];
  grips: TwoGripsAtLoad[];
}
interface Progresses {
  read: never;
  fit: never;
  layout: LayoutProgress;
  slack: never;
  /** Share of guides tried. */
  nextMove: number;
  counts: CountsAnswer;
  blanks: never;
  sureness: Sureness;
  spread: MarkSpread;
  power: never;
  finished: never;
  /** Share done. */
  nextReading: number;
  judge: never;
  second: never;
  days: never;
  series: never;
  realLine: never;
  reelLine: never;
  round: never;
  spiral: never;
  hands: never;
  grips: never;
}
export type Answer<T extends Task> = Answers[T['does']];
export type Progress<T extends Task> = Progresses[T['does']];

export interface ToWorker {
  id: number;
  task: Task;
}
export type FromWorker =
  | { id: number; says: 'progress'; progress: Progress<Task> }
  | { id: number; says: 'done'; answer: Answer<Task> }
  | { id: number; says: 'failed'; reason: string };
