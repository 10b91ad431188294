/**
 * What a blank's stiffness and mass say beside the layout: how fast it swings, bare and finished, and what weight
 * drops its tip by a third of the length. Each from the most probable blank, with the range over blanks that fit
 * the readings where there are readings.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { frequency } from '../frequency/frequency.ts';
import { tipLoadForThird } from '../layout/tip-load.ts';
import { type Spread, spreadOf } from '../sureness/spread.ts';
import { standardGravity } from '../units/gravity.ts';
import { type FinishedRod, finishedRod, type RodToDress } from './finished-rod.ts';

/** A rod that is let swing: what is on it, and how far from the tip it is held. */
export interface SwingingRod {
  rod: 'bare' | 'finished';
  clampFromTipM: number;
}
export interface PowerQuestion {
  parts: RodToDress;
  /** Where the guides stand on the finished rod. */
  marksFromTipM: readonly number[];
  swinging: readonly SwingingRod[];
  /** In front of the grip. */
  freeLengthM: number;
}
export interface SwingPrediction extends SwingingRod {
  /** First and second frequency; fewer where they cannot be told apart. */
  modes: SwingMode[];
}
export interface SwingMode {
  hz: number;
  /** 95 %; with the finished rod from wraps as a soft sleeve to feet one with the blank. Undefined without readings. */
  range?: Spread;
}
export interface Power {
  swings: SwingPrediction[];
  /** Undefined where no weight drops it so far. */
  thirdLoad?: { kg: number; range?: Spread };
}

/** `blanks`: as likely as each other after the readings; none where nothing was read. */
export function predictPower(
  question: PowerQuestion,
  tables: BlankTables,
  blanks: readonly BlankTables[],
): Power {
  const kg = thirdLoadKg(tables, question.freeLengthM);
  const kgs = blanks.flatMap((blank) => thirdLoadKg(blank, question.freeLengthM) ?? []);
  return {
    swings: question.swinging.map((swinging) => predictSwing(question, swinging, tables, blanks)),
    thirdLoad: kg === undefined ? undefined : { kg, range: kgs.length > 0 ? spreadOf(kgs) : undefined },
  };
}

function predictSwing(
  question: PowerQuestion,
  swinging: SwingingRod,
  tables: BlankTables,
  blanks: readonly BlankTables[],
): SwingPrediction {
  const likeliest = formsOf(question, swinging, tables).map(twoHz);
  const drawn = blanks.map((blank) => formsOf(question, swinging, blank).map(twoHz));
  const count = Math.min(...likeliest.map(({ length }) => length));
  const modes = Array.from({ length: count }, (_, mode): SwingMode => {
    const hz = mean(likeliest.map((form) => form[mode]));
    if (drawn.length === 0) return { hz };
    const of = (take: (values: number[]) => number) =>
      spreadOf(drawn.map((forms) => take(forms.map((form) => form[mode]).filter(Number.isFinite))));
    return {
      hz,
      range: { low: of((values) => Math.min(...values)).low, high: of((values) => Math.max(...values)).high },
    };
  });
  return { ...swinging, modes };
}

/** One form of the bare blank, two of the finished rod: how far wraps stiffen is known as a range only. */
function formsOf(
  { parts, marksFromTipM }: PowerQuestion,
  { rod, clampFromTipM }: SwingingRod,
  tables: BlankTables,
): FinishedRod[] {
  const free = freeRod(tables, clampFromTipM);
  if (rod === 'bare') return [{ rod: free, masses: [] }];
  const { loose, bonded } = finishedRod({ ...parts, rod: free }, marksFromTipM);
  const inFront = ({ fromTipM }: { fromTipM: number }) => fromTipM <= clampFromTipM;
  return [loose, bonded].map((form) => ({ ...form, masses: form.masses.filter(inFront) }));
}

function twoHz({ rod, masses }: FinishedRod): number[] {
  const answer = frequency({ rod, masses, modes: 2 });
  return answer.status === 'refused' ? [] : answer.hz;
}

function thirdLoadKg(tables: BlankTables, freeLengthM: number): number | undefined {
  const { status, tipN } = tipLoadForThird(freeRod(tables, freeLengthM));
  return status === 'converged' ? tipN / standardGravity : undefined;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
