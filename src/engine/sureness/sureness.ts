/**
 * How sure a layout's readings are: the same marks read on many blanks, each as likely as the other after the
 * bench's readings (stiffness/posterior.ts). Whatever is counted on them, a range or how often one layout beats
 * another, is a Monte Carlo estimate of its posterior; all layouts are read on the same blanks, so that a
 * comparison is made blank by blank.
 *
 * Not in it: what the model itself leaves out (friction, a ring's height mistaken, a blank that creeps).
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { type ByQuantity, byQuantity, criteriaIn } from '../layout/criteria.ts';
import { type LadderReading, makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { type ExpectedSpread, expectedSpreadOf, type Spread, spreadOf } from './spread.ts';
import { type TipSureness, tipSureness } from './tip-sureness.ts';

/** Marks that stay, with the rings, loads and limits that they are read with. */
export interface FixedMarks {
  /** Its rod gives the free length only. */
  ladder: LadderRequest;
  fromTipM: readonly number[];
}
export interface SurenessQuestion {
  start?: FixedMarks;
  own?: FixedMarks;
  proposed?: FixedMarks;
}
export type LayoutName = keyof SurenessQuestion;

export interface MarksSureness extends ByQuantity<Spread> {
  /** Blanks on which every load found its bend; the ranges are of these. */
  blanks: number;
  /** Blanks on which some load did not. */
  unbent: number;
  worst: ExpectedSpread;
  /** One per load of the ladder. */
  tips: TipSureness[];
}
export interface Sureness {
  /** How many blanks were bent. */
  blanks: number;
  start?: MarksSureness;
  own?: MarksSureness;
  proposed?: MarksSureness;
  /** On how many blanks the worst reading of our marks lies below the start's, of those on which both bend. */
  better?: Better;
}
export interface Better {
  ours: 'own' | 'proposed';
  count: number;
  of: number;
}

/** Whole blanks; `progress` hears of the answer after the first few, and again as their number doubles. */
export function readSureness(
  question: SurenessQuestion,
  blanks: readonly BlankTables[],
  progress: (soFar: Sureness) => void = () => undefined,
  firstAfter = 25,
): Sureness {
  const read: Record<LayoutName, (LadderReading | undefined)[]> = { start: [], own: [], proposed: [] };
  let next = firstAfter;
  blanks.forEach((blank, index) => {
    for (const name of layoutNames) {
      const marks = question[name];
      if (marks) read[name].push(readOn(blank, marks));
    }
    if (index + 1 !== next || index + 1 === blanks.length) return;
    progress(summary(question, read, next));
    next *= 2;
  });
  return summary(question, read, blanks.length);
}

const layoutNames = ['start', 'own', 'proposed'] as const satisfies LayoutName[];

/** Undefined where some load finds no bend: its other readings would be too good to be compared. */
function readOn(blank: BlankTables, { ladder, fromTipM }: FixedMarks): LadderReading | undefined {
  const rod = freeRod(blank, ladder.rod.lengthM);
  const reading = readLadder(makeLadder({ ...ladder, rod }), fromTipM);
  return reading.status === 'not-converged' ? undefined : reading;
}

function summary(
  question: SurenessQuestion,
  read: Record<LayoutName, (LadderReading | undefined)[]>,
  blanks: number,
): Sureness {
  const ours = question.own ? 'own' : question.proposed ? 'proposed' : undefined;
  return {
    blanks,
    start: question.start && marksSureness(question.start, read.start),
    own: question.own && marksSureness(question.own, read.own),
    proposed: question.proposed && marksSureness(question.proposed, read.proposed),
    better: ours && question.start && betterOf(ours, read[ours], read.start),
  };
}

function marksSureness({ ladder }: FixedMarks, all: readonly (LadderReading | undefined)[]): MarksSureness {
  const bent = all.filter((reading) => reading !== undefined);
  const spread = (value: (reading: LadderReading) => number) => spreadOf(bent.map(value));
  return {
    blanks: bent.length,
    unbent: all.length - bent.length,
    worst: expectedSpreadOf(bent.map(({ worst }) => worst)),
    ...byQuantity(({ id }) => spread(({ worstOf }) => worstOf[id].value), criteriaIn(ladder.limits)),
    tips: (bent[0]?.loads ?? []).map((_, load) => tipSureness(bent.map(({ loads }) => loads[load]))),
  };
}

function betterOf(
  ours: Better['ours'],
  marks: readonly (LadderReading | undefined)[],
  start: readonly (LadderReading | undefined)[],
): Better {
  let [count, of] = [0, 0];
  marks.forEach((reading, blank) => {
    const beside = start[blank];
    if (!reading || !beside) return;
    of++;
    if (reading.worst < beside.worst) count++;
  });
  return { ours, count, of };
}
