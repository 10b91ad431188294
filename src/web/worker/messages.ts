/** What the page and the engine's worker say to each other: plain, cloneable data in SI units. */
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import type { CountQuestion, CountsAnswer } from '../../engine/flow/count-answer.ts';
import type { MoveQuestion, NextMove } from '../../engine/flow/next-move.ts';
import type { Power, PowerQuestion } from '../../engine/flow/power.ts';
import type { SpiralProposal, SpiralQuestion } from '../../engine/flow/propose-spiral.ts';
import type { ReelLineAnswer } from '../../engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../../engine/flow/reel-line-question.ts';
import type { HandRow, HandsQuestion, RoundAtLoad, RoundQuestion } from '../../engine/flow/round-answer.ts';
import type { TwoGripsAtLoad, TwoGripsQuestion } from '../../engine/flow/two-grips.ts';
import type { KeepOut } from '../../engine/layout/kept-free.ts';
import type { LadderRequest } from '../../engine/layout/ladder-request.ts';
import type { LayoutAnswer, LayoutProgress } from '../../engine/layout/layout.ts';
import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import type { RealLineAtLoad, RealLineQuestion } from '../../engine/layout/real-line.ts';
import type { OutsideDiameter, RuledReading } from '../../engine/layout/rule-reading.ts';
import type { MarkSlack } from '../../engine/layout/slack.ts';
import type { JudgeAnswer, JudgeRequest } from '../../engine/load-test/rod-judgement.ts';
import type { SeriesUse } from '../../engine/series/fit-of-series.ts';
import type { LearntSeries } from '../../engine/series/learn-series.ts';
import type {
  FitAnswer,
  FitCurveSetup,
  FitRequest,
  FitSolved,
  SeriesPrior,
} from '../../engine/stiffness/request.ts';
import type { SecondEstimate } from '../../engine/stiffness/second-estimate.ts';
import type { DaysAnswer, DaysQuestion } from '../../engine/sureness/compare-days.ts';
import type { MarkSpread } from '../../engine/sureness/mark-spread.ts';
import type { NextReading } from '../../engine/sureness/next-reading.ts';
import type { Sureness, SurenessQuestion } from '../../engine/sureness/sureness.ts';

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
export interface SlackTask {
  does: 'slack';
  ladder: LadderRequest;
  fromTipM: readonly number[];
  footM: readonly number[];
  keepOut: readonly KeepOut[];
}

/** What to do first about a layout. */
export interface NextMoveTask {
  does: 'nextMove';
  question: MoveQuestion;
  /** Ends of moves are rounded to this. */
  snapM: number;
}

/** The best layouts of one guide fewer, as many and one more. */
interface CountsTask {
  does: 'counts';
  question: CountQuestion;
}

/** Fixed layouts read on many blanks that fit the bench's readings. */
export interface SurenessTask {
  does: 'sureness';
  fit: FitRequest;
  question: SurenessQuestion;
}

/** How far the best place of every guide moves on blanks that fit the bench's readings. */
export interface SpreadTask {
  does: 'spread';
  fit: FitRequest;
  request: LayoutRequest & LadderRequest;
  proposedFromTipM: readonly number[];
}

/** How fast the blank swings and what drops its tip by a third, with ranges where `fit` is given. */
export interface PowerTask {
  does: 'power';
  fit: FitRequest | undefined;
  tables: BlankTables;
  question: PowerQuestion;
}

/** The other blanks of a series, learnt from together and held against this one. */
export interface SeriesTask {
  does: 'series';
  blanks: readonly { id: string; name: string; request: FitRequest }[];
  request: FitRequest;
}
export interface SeriesAnswer {
  /** Undefined where no other blank was measured well enough. */
  learnt: LearntSeries | undefined;
  use: SeriesUse | undefined;
  /** What the fit of this blank takes; undefined where it is to be read by itself. */
  prior: SeriesPrior | undefined;
  /** Blanks of another length, or with too few readings. */
  leftOut: number;
}

/** A layout with a line that rubs and may lie on the blank. */
interface RealLineTask {
  does: 'realLine';
  question: RealLineQuestion;
}

/** Guides round the blank: turns, clearance and torque as laid. */
export interface RoundTask {
  does: 'round';
  question: RoundQuestion;
}
/** Angles for a spiral's guides. */
interface SpiralTask {
  does: 'spiral';
  question: SpiralQuestion;
}
/** Torque and twist of guides on top, under and in a spiral, held three ways. */
export interface HandsTask {
  does: 'hands';
  question: HandsQuestion;
}

/** The line off the reel: fan, first ring, stepping rings. */
export interface ReelLineTask {
  does: 'reelLine';
  question: ReelLineQuestion;
}
/** What each of two hands gives. */
export interface GripsTask {
  does: 'grips';
  question: TwoGripsQuestion;
}

/** Which reading would narrow the marks most; places the guides first. */
export interface NextReadingTask {
  does: 'nextReading';
  fit: FitRequest;
  /** On the fitted blank. */
  request: LayoutRequest & LadderRequest;
  /** Index of the set-up that still stands, and the height of its clamp. */
  standing?: number;
  clampHeightM?: number;
}

/** A taped-up rod judged from its photograph. */
interface JudgeTask {
  does: 'judge';
  question: JudgeRequest;
}

/** Moment over curvature beside the fit of everything else. */
export interface SecondTask {
  does: 'second';
  curve: FitCurveSetup;
  /** The bench without this curve; without set-ups `fitted` stands beside. */
  others: FitRequest;
  fitted: FitSolved;
}

/** One blank measured on two days. */
interface DaysTask {
  does: 'days';
  question: DaysQuestion;
}

/** What says how sure the other answers are; in lanes of their own. */
export type DoubtTask =
  | SurenessTask
  | SpreadTask
  | PowerTask
  | NextReadingTask
  | JudgeTask
  | SecondTask
  | DaysTask
  | SeriesTask
  | CountsTask;

/** Tasks of more than a frame. */
export type LongTask =
  | FitTask
  | LayoutTask
  | SlackTask
  | NextMoveTask
  | RealLineTask
  | ReelLineTask
  | RoundTask
  | SpiralTask
  | HandsTask
  | GripsTask
  | DoubtTask;
export type Task = ReadTask | LongTask;

export interface SecondAnswer extends SecondEstimate {
  /** Whether the fit beside it has seen this photograph too. */
  besideItself: boolean;
}

interface Answers {
  read: RuledReading;
  fit: FitAnswer;
  layout: LayoutAnswer;
  slack: MarkSlack[];
  nextMove: NextMove;
  counts: CountsAnswer;
  sureness: Sureness;
  spread: MarkSpread;
  power: Power;
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
  sureness: Sureness;
  spread: MarkSpread;
  power: never;
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
