/** What a photographed load test is judged by, and what its judgement says. */
import type { Finding, Reason } from '../finding.ts';
import type { LadderLoad, LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanePoint } from '../stiffness/curve-places.ts';
import type { FitRequest, FitSolved } from '../stiffness/request.ts';
import type { MovesAnswer } from './find-moves.ts';
import type { LengthDoubt } from './length-doubt.ts';
import type { Measured } from './seen-rod.ts';

export interface JudgeRequest {
  /** The bench without this photograph; its set-ups may be none. */
  fit: FitRequest;
  /** The layout's question; its rod gives the free length alone. */
  layout: LayoutRequest & LadderRequest;
  /** What is on the strips, and held for true where no ring was tapped. */
  marksFromTipM: readonly number[];
  photo: {
    points: readonly PlanePoint[];
    /** By guide, the tip-top first; undefined where it was not tapped. */
    ringsSeen: readonly (PlanePoint | undefined)[];
    load: LadderLoad;
    /** The axis at the hold where the builder set it; left out: as the curve shows it. */
    buttAngleRad?: number;
    localSigmaM?: number;
    driftSigmaM?: number;
    levelSigmaRad?: number;
  };
}

export interface JudgedRing {
  tapped: boolean;
  /** 0 at the tip-top. */
  markFromTipM: number;
  fromTipM: Measured;
  lineAngle: JudgedReading | undefined;
  /** Of the span to the next ring towards the butt. */
  gap: JudgedReading | undefined;
}

export interface JudgedReading {
  seen: Measured;
  /** By the bench alone; undefined where nothing was hung on it. */
  predicted: number | undefined;
  updated: number;
  /** Undefined where the reading does not count. */
  limit: number | undefined;
}

export interface RodJudgement {
  status: 'judged';
  rings: JudgedRing[];
  /** Photograph less prediction at the tip, from the hold, the butt as it was held; undefined without one. */
  tipOffM: PlanePoint | undefined;
  updated: FitSolved;
  /** Bench and photograph belong to no one blank: the bench then counts with four times its ±. */
  contradicted: boolean;
  /** Of bench and photograph together. */
  findings: Finding[];
  /** Undefined also where they are withheld. */
  moves: MovesAnswer | undefined;
  /** The curve is not as long as the rod: no place on it is sure enough to move a guide by. */
  withheld: LengthDoubt | undefined;
}

export type JudgeAnswer =
  | RodJudgement
  | { status: 'not-judged'; reason: Reason | undefined; findings: Finding[] };
