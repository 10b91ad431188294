/**
 * What a blank's stiffness and mass say beside the layout: how fast it swings, bare and finished, and what weight
 * drops its tip by a third of the length. Each from the most probable blank, with the range over blanks that fit
 * the readings where there are readings.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { frequency } from '../frequency/frequency.ts';
import { massForThirdKg } from '../layout/tip-load.ts';
import { type Spread, spreadOf } from '../sureness/spread.ts';
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

/** Held nearer to the tip than this, no rod swings. */
const shortestSwingM = 0.1;

/** Bare and finished, held at the grip, and as `counted`: there too where it is not said where; each once. */
export function powerQuestion(
  parts: RodToDress,
  { marksFromTipM, freeLengthM }: Pick<PowerQuestion, 'marksFromTipM' | 'freeLengthM'>,
  counted: readonly (Pick<SwingingRod, 'rod'> & Partial<SwingingRod>)[],
): PowerQuestion {
  const held = counted.map(({ rod, clampFromTipM = freeLengthM }): SwingingRod => {
    return { rod, clampFromTipM: Math.min(clampFromTipM, parts.blank.lengthM) };
  });
  const swinging: SwingingRod[] = [
    { rod: 'bare', clampFromTipM: freeLengthM },
    { rod: 'finished', clampFromTipM: freeLengthM },
    ...held.filter(({ clampFromTipM }) => clampFromTipM > shortestSwingM),
  ];
  return {
    parts,
    marksFromTipM,
    swinging: swinging.filter(
      (one, index) => swinging.findIndex((other) => swingsAlike(one, other)) === index,
    ),
    freeLengthM,
  };
}

/** The prediction for a rod held so. */
export function swingOf({ swings }: Power, rod: SwingingRod): SwingPrediction | undefined {
  return swings.find((one) => swingsAlike(one, rod));
}

function swingsAlike(a: SwingingRod, b: SwingingRod): boolean {
  return a.rod === b.rod && Math.abs(a.clampFromTipM - b.clampFromTipM) < 1e-6;
}

/** `blanks`: as likely as each other after the readings; none where nothing was read. */
export function predictPower(
  question: PowerQuestion,
  tables: BlankTables,
  blanks: readonly BlankTables[],
): Power {
  const kg = massForThirdKg(freeRod(tables, question.freeLengthM));
  const kgs = blanks.flatMap((blank) => massForThirdKg(freeRod(blank, question.freeLengthM)) ?? []);
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

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
