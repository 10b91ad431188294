/** What is asked of the worker that says how sure the other answers are; in lanes of their own. */
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import type { CountQuestion } from '../../engine/flow/count-answer.ts';
import type { RodToFinish } from '../../engine/flow/finish-effects.ts';
import type { PowerQuestion } from '../../engine/flow/power.ts';
import type { SpiralQuestion } from '../../engine/flow/propose-spiral.ts';
import type { ReelLineQuestion } from '../../engine/flow/reel-line-question.ts';
import type { HandsQuestion, RoundQuestion } from '../../engine/flow/round-answer.ts';
import type { TwoGripsQuestion } from '../../engine/flow/two-grips.ts';
import type { LadderRequest } from '../../engine/layout/ladder-request.ts';
import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import type { RealLineQuestion } from '../../engine/layout/real-line.ts';
import type { JudgeRequest } from '../../engine/load-test/rod-judgement.ts';
import type { LearntSeries } from '../../engine/series/learn-series.ts';
import type { SeriesUse } from '../../engine/series/use-of-series.ts';
import type { FitCurveSetup, FitRequest, FitSolved, SeriesPrior } from '../../engine/stiffness/request.ts';
import type { SecondEstimate } from '../../engine/stiffness/second-estimate.ts';
import type { DaysQuestion } from '../../engine/sureness/compare-days.ts';
import type { SurenessQuestion } from '../../engine/sureness/sureness.ts';

/** Fixed layouts read on many blanks that fit the bench's readings. */
export interface SurenessTask {
  does: 'sureness';
  fit: FitRequest;
  question: SurenessQuestion;
}

/** Blanks that fit the bench's readings, as likely as each other. */
export interface BlanksTask {
  does: 'blanks';
  fit: FitRequest;
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

/** Bare blank beside the finished rod. */
export interface FinishedTask {
  does: 'finished';
  parts: RodToFinish;
  marksFromTipM: readonly number[];
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
/** Torque and twist of guides on top, under and in a spiral, held three ways. */
interface HandsTask {
  does: 'hands';
  question: HandsQuestion;
}

/** The line off the reel: fan, first ring, stepping rings. */
interface ReelLineTask {
  does: 'reelLine';
  question: ReelLineQuestion;
}

/** Angles for a spiral's guides. */
interface SpiralTask {
  does: 'spiral';
  question: SpiralQuestion;
}
/** What each of two hands gives. */
interface GripsTask {
  does: 'grips';
  question: TwoGripsQuestion;
}

/** The best layouts of one guide fewer, as many and one more. */
interface CountsTask {
  does: 'counts';
  question: CountQuestion;
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
  | BlanksTask
  | SurenessTask
  | SpreadTask
  | PowerTask
  | FinishedTask
  | NextReadingTask
  | JudgeTask
  | SecondTask
  | DaysTask
  | SeriesTask
  | RealLineTask
  | ReelLineTask
  | RoundTask
  | HandsTask
  | SpiralTask
  | GripsTask
  | CountsTask;

export interface SecondAnswer extends SecondEstimate {
  /** Whether the fit beside it has seen this photograph too. */
  besideItself: boolean;
}
