import { describe, expect, it } from 'vitest';
import { assembleBlank } from './assemble.ts';
import type { ClampSetup } from './bench.ts';
import { diameterAt, diameterProfile } from './diameter-profile.ts';
import { axisDrops } from './edge.ts';
import { freeRod } from './free-rod.ts';
import { fourPiece } from './test-bench.ts';

describe('diameters along the blank', () => {
  it('leaves a male end hidden in a sleeve out of the diameters', () => {
    const { sections } = fourPiece();
    const profile = diameterProfile(sections, assembleBlank(sections));
    expect(profile.map(({ outsideM }) => outsideM)).toEqual([0.0016, 0.0042, 0.0048, 0.0065, 0.0098]);
    expect(diameterAt(profile, 0.715 / 2)).toBeCloseTo(0.0029, 12);
    expect(diameterAt(profile, 9)).toBe(0.0098);
    expect(diameterAt([], 1)).toBeUndefined();
  });
});

describe('edge to axis', () => {
  const profile = [{ fromTipM: 0, outsideM: 0.008 }];
  const setup = { ...(fourPiece().setups[0] as ClampSetup), clampFromTipM: 2 };
  const reading = (fromTipM: number, dropM: number) => ({ id: '', fromTipM, dropM });
  it('where the blank lies along the line, the upper edge is half a diameter too high', () => {
    const drops = (edge: ClampSetup['edge']) =>
      axisDrops({ ...setup, edge }, [reading(0, 0), reading(1, 0)], profile)[0].dropM;
    expect([drops('axis'), drops('upper'), drops('lower')]).toEqual([0, 0.004, -0.004]);
  });
  it('where it hangs at 60° to the line, half of that', () => {
    const sine = Math.sin(Math.PI / 3);
    const slanted = [reading(0, 2 * sine), reading(1, sine)];
    expect(axisDrops({ ...setup, edge: 'upper' }, slanted, profile)[0].dropM).toBeCloseTo(
      2 * sine + 0.002,
      9,
    );
  });
});

describe('the rod in front of the grip', () => {
  const tables = {
    stiffness: [
      { fromTipM: 0, EINm2: 1 },
      { fromTipM: 2, EINm2: 5 },
      { fromTipM: 2.7, EINm2: 9 },
    ],
    massPerLength: [{ fromTipM: 0, kgPerM: 0.01 }],
  };
  it('ends exactly at the grip, with the value between the rows', () => {
    expect(freeRod(tables, 1).stiffness).toEqual([
      { fromTipM: 0, EINm2: 1 },
      { fromTipM: 1, EINm2: 3 },
    ]);
  });
  it('keeps a one-row table and leaves the input alone', () => {
    const before = structuredClone(tables);
    expect(freeRod(tables, 2).massPerLength).toEqual([{ fromTipM: 0, kgPerM: 0.01 }]);
    expect(tables).toEqual(before);
  });
});
