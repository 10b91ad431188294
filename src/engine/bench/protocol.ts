/**
 * Which readings to take on this blank: the ten-minute start, and the protocol of some twenty minutes.
 *
 * Why so: drops at several flags under a weight tell more than many weights read at the tip, and moving the clamp
 * up the blank tells more again, most of all near the tip (linear error study, docs of the theory). Every set-up
 * hangs about the weight that drops its free length by a third, and half of it, where drops are large enough to
 * read and the blank is far from harm. Two readings are taken twice: a difference shows a slipped clamp.
 */
import { clampHeightNeeded } from './floor.ts';

export type ProtocolKind = 'ten-minute' | 'twenty-minute';

export interface ProtocolQuestion {
  kind: ProtocolKind;
  blankLengthM: number;
  /** Length clamped or under the V-blocks at the butt; 6 in where left out. */
  heldM?: number;
  /** Drop of the tip with the axis level at the clamp, from the fit or, before it, from the diameters. */
  tipDropM: (loaded: { clampFromTipM: number; massKg: number }) => number;
  /** Height of the bench's clamp, if the builder gave it: weights are then kept off the floor. */
  clampHeightM?: number;
}
export interface ProtocolSetup {
  name: string;
  clampFromTipM: number;
  flagsFromTipM: number[];
  /** In this order; 0 first, so that sag and bow show. */
  loads: ProtocolLoad[];
  clampHeightNeededM: number;
}
export interface ProtocolLoad {
  massKg: number;
  expectedTipDropM: number;
  /** Flags read under this weight (the tip alone where the rest would tell little). */
  readFromTipM: number[];
  /** A reading taken again at the end, to show a slipped clamp. */
  repeat: boolean;
}
export interface Protocol {
  kind: ProtocolKind;
  setups: ProtocolSetup[];
  readingCount: number;
  /** Weight that drops the tip by a third of the length in front of the butt clamp. */
  thirdLoadKg: number;
}

export function planProtocol(question: ProtocolQuestion): Protocol {
  const { kind, blankLengthM, heldM = 0.1524 } = question;
  const clampM = blankLengthM - heldM;
  const thirdLoadKg = loadForDrop(question, clampM, clampM / 3);
  const setups = kind === 'ten-minute' ? [tenMinutes(question, clampM)] : twentyMinutes(question, clampM);
  const readingCount = setups
    .flatMap(({ loads }) => loads)
    .reduce((sum, { readFromTipM }) => sum + readFromTipM.length, 0);
  return { kind, setups, readingCount, thirdLoadKg };
}

/** Flags at the tip, 1/9, 1/4 and 1/2 of the blank: tip, 12, 27 and 54 in of a 9 ft blank. */
function flags(blankLengthM: number): number[] {
  return [0, blankLengthM / 9, blankLengthM / 4, blankLengthM / 2].map(
    (flag) => Math.round(flag * 1000) / 1000,
  );
}

function tenMinutes(question: ProtocolQuestion, clampM: number): ProtocolSetup {
  const all = flags(question.blankLengthM);
  const [, full] = weights(question, clampM);
  return setup(question, { name: 'Whole blank level', clampM, flags: all }, [
    { massKg: 0, readFromTipM: [0], repeat: false },
    { massKg: full, readFromTipM: all, repeat: false },
  ]);
}

function twentyMinutes(question: ProtocolQuestion, clampM: number): ProtocolSetup[] {
  const { blankLengthM } = question;
  const all = flags(blankLengthM);
  const tipOnly = [0];
  const steps: SetupStep[] = [
    { name: 'Tip over a padded edge', clampM: blankLengthM / 9, flags: tipOnly },
    { name: 'Whole blank level', clampM, flags: all, again: true },
    { name: 'Blocks moved to half', clampM: blankLengthM / 2, flags: tipOnly, again: true },
    { name: 'Blocks moved three quarters up', clampM: blankLengthM / 4, flags: tipOnly },
  ];
  return steps.map((step) => {
    const [half, full] = weights(question, step.clampM);
    const once = [0, half, full].map((massKg) => ({ massKg, readFromTipM: step.flags, repeat: false }));
    const again = step.again ? [{ massKg: 0, readFromTipM: tipOnly, repeat: true }] : [];
    return setup(question, step, [...once, ...again]);
  });
}

interface SetupStep {
  name: string;
  clampM: number;
  flags: number[];
  /** The tip is read once more at the end, unloaded. */
  again?: boolean;
}

function setup(
  question: ProtocolQuestion,
  step: SetupStep,
  loads: Omit<ProtocolLoad, 'expectedTipDropM'>[],
): ProtocolSetup {
  const expected = loads.map((load) => ({
    ...load,
    expectedTipDropM: question.tipDropM({ clampFromTipM: step.clampM, massKg: load.massKg }),
  }));
  const deepest = Math.max(...expected.map(({ expectedTipDropM }) => expectedTipDropM));
  return {
    name: step.name,
    clampFromTipM: Math.round(step.clampM * 1000) / 1000,
    flagsFromTipM: step.flags,
    loads: expected,
    clampHeightNeededM: clampHeightNeeded({
      nominalAngleRad: 0,
      freeLengthM: step.clampM,
      tipDropM: deepest,
    }),
  };
}

/** Half and full weight for this clamp: a third of the free length, or what the floor allows. */
function weights(question: ProtocolQuestion, clampM: number): [half: number, full: number] {
  const floorM =
    question.clampHeightM === undefined ? Number.POSITIVE_INFINITY : roomBelow(question.clampHeightM);
  const dropM = Math.min(clampM / 3, floorM);
  const full = nearestWeight(loadForDrop(question, clampM, dropM));
  return [nearestWeight(full / 2), full];
}

function roomBelow(clampHeightM: number): number {
  return clampHeightM - clampHeightNeeded({ nominalAngleRad: 0, freeLengthM: 1, tipDropM: 0 });
}

/** Bisection on the logarithm of the weight; the drop grows with it. */
function loadForDrop(question: ProtocolQuestion, clampM: number, dropM: number): number {
  let [low, high] = [1e-4, 20];
  for (let step = 0; step < 40 && high / low > 1.005; step++) {
    const middle = Math.sqrt(low * high);
    if (question.tipDropM({ clampFromTipM: clampM, massKg: middle }) < dropM) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Weights that lie about on a bench or add up from such: 1, 2, 5, 10, 20, 50 g ... and simple sums of them. */
export function nearestWeight(massKg: number): number {
  const steps = [1, 1.5, 2, 3, 4, 5, 6, 7, 8, 10];
  const grams = Math.max(1, massKg * 1000);
  const decade = 10 ** Math.floor(Math.log10(grams));
  const choices = steps.map((step) => step * decade).filter((choice) => Number.isInteger(choice));
  const nearest = choices.reduce((a, b) =>
    Math.abs(Math.log(b / grams)) < Math.abs(Math.log(a / grams)) ? b : a,
  );
  return nearest / 1000;
}
