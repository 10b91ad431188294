import { describe, expect, test } from 'vitest';
import { makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { commonFriction, readRealLine } from './real-line.ts';

/** An invented 9 ft blank with ten guides. */
const request = (side: 'under' | 'over'): LadderRequest => ({
  rod: {
    lengthM: 2.49,
    stiffness: [
      { fromTipM: 0, EINm2: 0.04 },
      { fromTipM: 0.6, EINm2: 0.5 },
      { fromTipM: 1.3, EINm2: 2.2 },
      { fromTipM: 2.49, EINm2: 10 },
    ],
    massPerLength: [
      { fromTipM: 0, kgPerM: 0.004 },
      { fromTipM: 2.49, kgPerM: 0.035 },
    ],
  },
  buttAngleRad: Math.PI / 4,
  reel: { alongM: -0.2, offsetM: 0.055 },
  guides: {
    count: 10,
    ringHeightsM: [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 14].map((mm) => mm / 1000),
    massesKg: new Array(10).fill(0.00015),
    side,
  },
  tipTop: { ringHeightM: 0.0025, massKg: 0.00025 },
  ladder: [
    { tensionN: 0.5, pullAngleRad: -Math.PI / 2 },
    { tensionN: 2, pullAngleRad: -Math.PI / 2 },
  ],
  limits: { lineAngleRad: 0.2618, gapM: 0.01, extraBendPerM: 0.05 },
});
const fromTipM = [0.11, 0.24, 0.38, 0.54, 0.72, 0.92, 1.14, 1.39, 1.67, 1.98];
const diameters = [
  { fromTipM: 0, outsideM: 0.0017 },
  { fromTipM: 2.49, outsideM: 0.0091 },
];
const question = (side: 'under' | 'over', friction = commonFriction) => ({
  ladder: request(side),
  fromTipM,
  friction,
  diameters,
});

describe('a line that rubs', () => {
  const read = readRealLine(question('under'));
  const ladder = readLadder(makeLadder(request('under')), fromTipM);

  test('the free line’s worst reading is the ladder’s own', () => {
    read.forEach(({ free }, load) => {
      expect(free.ratio / ladder.loads[load].worstAt.ratio).toBeCloseTo(1, 6);
    });
  });

  test('coming in the reel feels more than the pull, going out less, and more so with more friction', () => {
    for (const { pullN, rubbing } of read) {
      const at = (way: 'in' | 'out', coefficient: number) =>
        rubbing.find(({ friction: one }) => one.direction === way && one.coefficient === coefficient)!
          .reelTensionN;
      expect(at('in', 0.1)).toBeGreaterThan(pullN);
      expect(at('in', 0.3)).toBeGreaterThan(at('in', 0.1));
      expect(at('out', 0.1)).toBeLessThan(pullN);
      expect(at('out', 0.3)).toBeLessThan(at('out', 0.1));
    }
  });

  test('the reel feels exp(µ · all turns) at small friction (Euler 1769, Eytelwein 1808)', () => {
    const coefficient = 1e-4;
    const slight = readRealLine(question('under', { lowest: coefficient, highest: coefficient }));
    slight.forEach(({ pullN, rubbing }, load) => {
      const turns = ladder.loads[load].rings.reduce((sum, { lineAngleRad }) => sum + lineAngleRad, 0);
      expect(Math.log(rubbing[0].reelTensionN / pullN) / coefficient).toBeCloseTo(turns, 3);
    });
  });

  test('no friction at all changes nothing', () => {
    for (const { free, rubbing, pullN } of readRealLine(question('under', { lowest: 0, highest: 0 }))) {
      for (const { worst, reelTensionN } of rubbing) {
        expect(worst.ratio).toBeCloseTo(free.ratio, 9);
        expect(reelTensionN).toBeCloseTo(pullN, 9);
      }
    }
  });
});

test('with guides on top how deep the line would cut the blank counts in the free line’s worst, as in the ladder', () => {
  const onTop = request('over');
  const counted: LadderRequest = {
    ...onTop,
    contact: {
      diameters: [
        { fromTipM: 0, outsideM: 0.008 },
        { fromTipM: 2.49, outsideM: 0.02 },
      ],
    },
    limits: { ...onTop.limits, intoBlankM: 1e-4 },
  };
  const ladder = readLadder(makeLadder(counted), fromTipM);
  const read = readRealLine({ ...question('over', { lowest: 0, highest: 0 }), ladder: counted });
  read.forEach(({ free, rubbing }, load) => {
    const { worstAt } = ladder.loads[load];
    expect(worstAt.metric).toBe('intoBlank');
    expect(free).toMatchObject({ metric: 'intoBlank', index: worstAt.index });
    expect(free.ratio / worstAt.ratio).toBeCloseTo(1, 6);
    for (const { worst } of rubbing) expect(worst.ratio / free.ratio).toBeCloseTo(1, 6);
  });
});

test('a roller rubs by its share alone: all of them turning as a fifth are a fifth of the coefficient', () => {
  const rubbed = (coefficient: number, share?: number) => {
    const { ladder, ...rest } = question('under', { lowest: coefficient, highest: coefficient });
    const frictionShares = share === undefined ? undefined : new Array(10).fill(share);
    const guides = { ...ladder.guides, frictionShares };
    const tensionless = { ...ladder, guides, tipTop: { ...ladder.tipTop } };
    return readRealLine({ ...rest, ladder: tensionless })[1];
  };
  const [rings, rollers] = [rubbed(0.2), rubbed(0.2, 0.2)];
  // the tip-top stays a ring: its turn at the full coefficient, the others' at a fifth (Euler 1769)
  const turns = readLadder(makeLadder(request('under')), fromTipM).loads[1].rings.map(
    (one) => one.lineAngleRad,
  );
  const others = turns.slice(1).reduce((sum, one) => sum + one, 0);
  const log = (read: typeof rings) => Math.log(read.rubbing[0].reelTensionN / read.pullN);
  expect(log(rollers) / (0.2 * turns[0] + 0.04 * others)).toBeCloseTo(1, 1);
  expect(log(rings) / (0.2 * (turns[0] + others))).toBeCloseTo(1, 1);
  expect(log(rollers)).toBeLessThan(0.7 * log(rings));
});

test('contact is asked for only where the guides stand on top, and a longer way touches', () => {
  expect(readRealLine(question('under')).every(({ contact }) => contact === undefined)).toBe(true);
  for (const { contact } of readRealLine(question('over'))) {
    fromTipM.forEach((station, k) => {
      const spanM = station - (fromTipM[k - 1] ?? 0);
      expect(contact?.stretches[k].touches).toBe(spanM > (contact?.clear[k].largestClearM ?? 0));
    });
  }
});
