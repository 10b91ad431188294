import { describe, expect, it } from 'vitest';
import { estimateFromDiameters } from './estimate.ts';
import { handyWeightWithin, planProtocol } from './protocol.ts';

/** A made-up blank: drop = free length × load/(load + 2 × the third's load), the third's load 112 g × (L/2.5)³. */
const tipDropM = ({ clampFromTipM, massKg }: { clampFromTipM: number; massKg: number }) => {
  const third = 0.112 * (clampFromTipM / 2.59) ** 1.5;
  return (clampFromTipM * massKg) / (massKg + 2 * third);
};
const nineFoot = { blankLengthM: 2.743, tipDropM };

describe('measuring protocol', () => {
  it('twenty minutes: some two dozen readings, the clamp moved up the blank, two readings repeated', () => {
    const plan = planProtocol({ ...nineFoot, kind: 'twenty-minute' });
    expect(plan.setups.map(({ clampFromTipM }) => clampFromTipM)).toEqual([0.305, 2.591, 1.372, 0.686]);
    expect(plan.setups[1].flagsFromTipM).toEqual([0, 0.305, 0.686, 1.372]);
    expect(plan.setups[1].loads.map(({ massKg }) => massKg)).toEqual([0, 0.05, 0.1, 0]);
    expect(plan.readingCount).toBe(25);
    expect(plan.setups.map(({ loads }) => loads.filter(({ readAtClamp }) => readAtClamp).length)).toEqual([
      0, 2, 0, 0,
    ]);
    expect(plan.setups.flatMap(({ loads }) => loads).filter(({ repeat }) => repeat)).toHaveLength(2);
    expect(plan.thirdLoadKg).toBeCloseTo(0.112, 2);
  });
  it('asks for no weight beyond the one that drops the tip by a third, whatever the blank', () => {
    for (const scale of [0.31, 0.7, 0.83, 1, 1.19, 1.7, 2.3, 9]) {
      const softer = (query: { clampFromTipM: number; massKg: number }) =>
        tipDropM({ ...query, massKg: query.massKg * scale });
      const plan = planProtocol({ ...nineFoot, tipDropM: softer, kind: 'twenty-minute' });
      const [, half, full] = plan.setups[1].loads.map(({ massKg }) => massKg);
      expect(full).toBeLessThanOrEqual(plan.thirdLoadKg * (1 + 1e-6));
      expect(full).toBeGreaterThan(0.75 * plan.thirdLoadKg);
      expect(half).toBeLessThanOrEqual(full / 2);
    }
  });
  it('ten minutes: one set-up, one weight', () => {
    const plan = planProtocol({ ...nineFoot, kind: 'ten-minute' });
    expect(plan.setups).toHaveLength(1);
    expect(plan.readingCount).toBe(6);
  });
  it('with its series: half the readings, and still what tells an odd blank', () => {
    const full = planProtocol({ ...nineFoot, kind: 'twenty-minute' });
    const plan = planProtocol({ ...nineFoot, kind: 'with-series' });
    expect(plan.setups.map(({ clampFromTipM }) => clampFromTipM)).toEqual([0.305, 2.591, 1.372]);
    expect(plan.setups[1].flagsFromTipM).toEqual([0, 0.686]);
    expect(plan.readingCount).toBe(13);
    expect(plan.thirdLoadKg).toBe(full.thirdLoadKg);
    for (const { loads } of plan.setups) {
      expect(loads[0].massKg).toBe(0);
      for (const { readFromTipM } of loads) expect(readFromTipM).toContain(0);
    }
    expect(plan.setups[1].loads.map(({ massKg }) => massKg)).toEqual(
      full.setups[1].loads.map(({ massKg }) => massKg),
    );
  });
  it('weights follow the power of the blank', () => {
    const stiffer = (query: { clampFromTipM: number; massKg: number }) =>
      tipDropM({ ...query, massKg: query.massKg / 3.6 });
    const plan = planProtocol({ blankLengthM: 2.743, kind: 'twenty-minute', tipDropM: stiffer });
    expect(plan.setups[1].loads[2].massKg).toBe(0.4);
  });
  it('no drop goes below the floor of a low clamp', () => {
    const plan = planProtocol({ ...nineFoot, kind: 'twenty-minute', clampHeightM: 0.6 });
    for (const { clampHeightNeededM } of plan.setups) expect(clampHeightNeededM).toBeLessThan(0.66);
    expect(plan.setups[1].loads[2].massKg).toBeLessThan(0.1);
  });
  it.each([
    [0.0009, 0.001],
    [0.107, 0.1],
    [0.0133, 0.012],
    [0.046, 0.045],
    [0.93, 0.9],
  ])('%f kg is hung as %f kg', (wanted, hung) => expect(handyWeightWithin(wanted)).toBe(hung));
});

describe('a first guess from diameters', () => {
  it('is a thin tube: 10.2 mm outside gives about 20 N·m² in carbon (an invented blank of known load)', () => {
    const { stiffness, massPerLength } = estimateFromDiameters([{ fromTipM: 0, outsideM: 0.0102 }], 'carbon');
    expect(stiffness[0].EINm2).toBeGreaterThan(18);
    expect(stiffness[0].EINm2).toBeLessThan(23);
    expect(massPerLength[0].kgPerM).toBeCloseTo(0.0256, 3);
  });
});

// Ranges: common practice, no source.
