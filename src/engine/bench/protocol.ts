/**
 * Which readings to take on this blank: the ten-minute start, the protocol of some twenty minutes, and half of it
 * where the blanks of its series say the rest.
 *
 * Why so: drops at several flags under a weight tell more than many weights read at the tip, and moving the clamp
 * up the blank tells more again, most of all near the tip (linear error study, docs of the theory). The whole blank
 * is loaded until its free length drops by a third; shorter lengths by less, since the same share of a shorter
 * length strains the blank more (ε ≈ 1.5·share·OD/length): every weight stays near half of carbon's caution level,
 * with room for a blank twice as soft as its first guess. Half of each weight is hung too. Two readings are taken
 * twice: a difference shows a slipped clamp. On the whole blank it is also read right at the clamp, where nothing bends:
 * what is read there shows another edge than stated, or a line of reference that is off, which no other drop tells.
 */
import { clampHeightNeeded } from './floor.ts';

export type ProtocolKind = 'ten-minute' | 'twenty-minute' | 'with-series';

interface ProtocolQuestion {
  kind: ProtocolKind;
  blankLengthM: number;
  /** Length clamped or under the V-blocks at the butt; 6 in where left out. */
  heldM?: number;
  /** Drop of the tip with the axis level at the clamp, from the fit or, before it, from the diameters. */
  tipDropM: (loaded: { clampFromTipM: number; massKg: number }) => number;
  /** Height of the bench's clamp, if the builder gave it: weights are then kept off the floor. */
  clampHeightM?: number;
}
/** Where the clamp stands: the tip alone in front of it, the whole blank, half of it, or a quarter. */
export type ProtocolStand = 'tip' | 'whole' | 'half' | 'quarter';
export interface ProtocolSetup {
  stand: ProtocolStand;
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
  /** Read right at the clamp too. */
  readAtClamp?: boolean;
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
  const { kind, blankLengthM, heldM = commonHeldM } = question;
  const clampM = blankLengthM - heldM;
  const thirdLoadKg = loadForDrop(question, clampM, clampM / 3);
  const setups = setupsOf[kind](question, clampM);
  return { kind, setups, readingCount: countReadings(setups), thirdLoadKg };
}

export function countReadings(setups: readonly Pick<ProtocolSetup, 'loads'>[]): number {
  return setups
    .flatMap(({ loads }) => loads)
    .reduce((sum, { readFromTipM, readAtClamp }) => sum + readFromTipM.length + (readAtClamp ? 1 : 0), 0);
}

/** Length clamped or under the V-blocks at the butt: 6 in. */
export const commonHeldM = 0.1524;

/** Flags at the tip, 1/9, 1/4 and 1/2 of the blank: tip, 12, 27 and 54 in of a 9 ft blank. */
function flags(blankLengthM: number): number[] {
  return [0, blankLengthM / 9, blankLengthM / 4, blankLengthM / 2].map(
    (flag) => Math.round(flag * 1000) / 1000,
  );
}

function tenMinutes(question: ProtocolQuestion, clampM: number): ProtocolSetup {
  const all = flags(question.blankLengthM);
  const whole = { stand: 'whole', clampM, share: dropShare.whole, flags: all } as const;
  const [, full] = weights(question, whole);
  return setup(question, whole, [
    { massKg: 0, readFromTipM: [0], repeat: false },
    { massKg: full, readFromTipM: all, readAtClamp: true, repeat: false },
  ]);
}

const setupsOf: Record<ProtocolKind, (question: ProtocolQuestion, clampM: number) => ProtocolSetup[]> = {
  'ten-minute': (question, clampM) => [tenMinutes(question, clampM)],
  'twenty-minute': twentyMinutes,
  'with-series': withSeries,
};

/**
 * About half of the twenty minutes, for a blank whose series says the rest. What tells an odd blank stays: the tip
 * under nothing and under every weight, one reading taken again, the last ninth by itself. Every second flag goes,
 * the clamp at three quarters, and the half weight on a moved clamp.
 */
function withSeries(question: ProtocolQuestion, clampM: number): ProtocolSetup[] {
  const quarterM = question.blankLengthM / 4;
  return twentyMinutes(question, clampM)
    .filter(({ clampFromTipM }) => Math.abs(clampFromTipM - quarterM) > 0.001)
    .map((setup) => {
      const flagsFromTipM = setup.flagsFromTipM.filter((_, index) => index % 2 === 0);
      const loads = setup.loads
        .filter((_, index) => setup.flagsFromTipM.length > 1 || index === 0 || index === 2)
        .map((load) => ({
          ...load,
          readFromTipM: load.readFromTipM.filter((flag) => flagsFromTipM.includes(flag)),
        }));
      return { ...setup, flagsFromTipM, loads };
    });
}

function twentyMinutes(question: ProtocolQuestion, clampM: number): ProtocolSetup[] {
  const { blankLengthM } = question;
  const all = flags(blankLengthM);
  const tipOnly = [0];
  const steps: SetupStep[] = [
    { stand: 'tip', clampM: blankLengthM / 9, share: dropShare.tip, flags: tipOnly },
    { stand: 'whole', clampM, share: dropShare.whole, flags: all, again: true },
    {
      stand: 'half',
      clampM: blankLengthM / 2,
      share: dropShare.part,
      flags: tipOnly,
      again: true,
    },
    {
      stand: 'quarter',
      clampM: blankLengthM / 4,
      share: dropShare.part,
      flags: tipOnly,
    },
  ];
  return steps.map((step) => {
    const [half, full] = weights(question, step);
    const once = [0, half, full].map((massKg, index) => ({
      massKg,
      readFromTipM: step.flags,
      ...(step.flags.length > 1 && index !== 1 ? { readAtClamp: true } : {}),
      repeat: false,
    }));
    const again = step.again ? [{ massKg: 0, readFromTipM: tipOnly, repeat: true }] : [];
    return setup(question, step, [...once, ...again]);
  });
}

/** Drop of the tip as a share of the free length. */
const dropShare = { whole: 1 / 3, part: 0.15, tip: 0.085 } as const;

/** How far the tip may drop with the clamp anywhere, as a share of the length in front of them. */
export function dropShareAt(clampM: number, blankLengthM: number): number {
  if (clampM >= 0.9 * blankLengthM) return dropShare.whole;
  return clampM < 0.2 * blankLengthM ? dropShare.tip : dropShare.part;
}

interface SetupStep {
  stand: ProtocolStand;
  share: number;
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
    stand: step.stand,
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

/** Half and full weight for this set-up, as far as the floor allows. */
export function weights(
  question: Pick<ProtocolQuestion, 'tipDropM' | 'clampHeightM'>,
  { clampM, share }: { clampM: number; share: number },
): [half: number, full: number] {
  const { clampHeightM } = question;
  const floorM = clampHeightM === undefined ? Number.POSITIVE_INFINITY : roomBelow(clampHeightM);
  const full = handyWeightWithin(loadForDrop(question, clampM, Math.min(share * clampM, floorM)));
  return [handyWeightWithin(full / 2), full];
}

function roomBelow(clampHeightM: number): number {
  return clampHeightM - clampHeightNeeded({ nominalAngleRad: 0, freeLengthM: 1, tipDropM: 0 });
}

/** Bisection on the logarithm of the weight; the drop grows with it. */
function loadForDrop(question: Pick<ProtocolQuestion, 'tipDropM'>, clampM: number, dropM: number): number {
  let [low, high] = [1e-4, 20];
  for (let step = 0; step < 40 && high / low > 1.005; step++) {
    const middle = Math.sqrt(low * high);
    if (question.tipDropM({ clampFromTipM: clampM, massKg: middle }) < dropM) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/**
 * The heaviest weight at most `massKg` that lies about on a bench or adds up from such: 1, 2, 5, 10, 20, 50 g ... and
 * simple sums of them. Never more: the limit it is taken for (a third of the length, the floor) is one. 1 g at least.
 */
export function handyWeightWithin(massKg: number): number {
  const steps = [1, 1.2, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9];
  // A weight computed a hair short of a handy one is that one.
  const grams = Math.max(1, massKg * 1000 * (1 + 1e-9));
  const decade = 10 ** Math.floor(Math.log10(grams));
  const fitting = steps
    .map((step) => Number((step * decade).toPrecision(3)))
    .filter((choice) => Number.isInteger(choice) && choice <= grams);
  return Math.max(...fitting) / 1000;
}
