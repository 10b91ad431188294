import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assembleBlank, locateMark, stationOf } from './assemble.ts';
import type { Joint, Section } from './bench.ts';
import { keepOutZones, stiffZones } from './ferrule-zones.ts';
import { fourPiece, section, sleeveJoint } from './test-bench.ts';

const putIn: Joint = { kind: 'put-in', overlapM: 0.06, gapM: 0, plugM: 0 };
const spigot: Joint = { kind: 'spigot', overlapM: 0, gapM: 0.006, plugM: 0.06, stiffnessRatio: 1.4 };

describe('stations across ferrules', () => {
  it('assembled length is the sections less the overlaps (common practice; geometry)', () => {
    expect(assembleBlank(fourPiece().sections).lengthM).toBeCloseTo(2.855 - 0.11, 12);
  });
  it('a spigot adds its gap and hides nothing but has no surface in the gap', () => {
    const blank = assembleBlank([section('u', 1, { joint: spigot }), section('l', 1.2)]);
    expect(blank.lengthM).toBeCloseTo(2.206, 12);
    expect(locateMark(blank, 1.003)).toEqual({ onSection: 'none', gapOfJoint: 0 });
    expect(locateMark(blank, 0.999)).toMatchObject({ onSection: 0 });
    expect(locateMark(blank, 1.0061)).toMatchObject({ onSection: 1 });
    const [zone] = stiffZones(blank);
    expect(zone.fromTipM).toBeCloseTo(0.973, 12);
    expect(zone.toTipM).toBeCloseTo(1.033, 12);
    expect(zone.ratio).toBe(1.4);
  });
  it('inside a sleeve the mark stands on the upper section, inside a put-in on the lower one', () => {
    const sleeve = assembleBlank([section('u', 1, { joint: sleeveJoint(0.05) }), section('l', 1)]);
    expect(locateMark(sleeve, 0.97)).toMatchObject({ onSection: 0 });
    const ferrule = assembleBlank([section('u', 1, { joint: putIn }), section('l', 1)]);
    const mark = locateMark(ferrule, 0.97);
    expect(mark).toMatchObject({ onSection: 1 });
    if (mark.onSection !== 'none') expect(mark.fromOwnTipM).toBeCloseTo(0.03, 12);
  });
  it('marks from the two ends of a section add up to its length, and lead back to the station', () => {
    const lengths = fc.array(fc.double({ min: 0.4, max: 1.5, noNaN: true }), { minLength: 1, maxLength: 7 });
    const joints = fc.constantFrom(sleeveJoint(0.04), putIn, spigot);
    fc.assert(
      fc.property(
        lengths,
        fc.array(joints, { minLength: 7, maxLength: 7 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ls, js, share) => {
          const sections: Section[] = ls.map((lengthM, i) =>
            section(`${i}`, lengthM, i < ls.length - 1 ? { joint: js[i] } : {}),
          );
          const blank = assembleBlank(sections);
          const station = share * blank.lengthM;
          const mark = locateMark(blank, station);
          if (mark.onSection === 'none') {
            const { seat } = blank.joints[mark.gapOfJoint];
            expect(station).toBeGreaterThan(seat.fromTipM);
            expect(station).toBeLessThan(seat.toTipM);
            return;
          }
          const on = blank.sections[mark.onSection];
          expect(mark.fromOwnTipM + mark.fromOwnButtM).toBeCloseTo(on.lengthM, 9);
          expect(stationOf(blank, mark.onSection, mark.fromOwnTipM)).toBeCloseTo(station, 9);
          expect(station).toBeGreaterThanOrEqual(on.visible.fromTipM - 1e-9);
          expect(station).toBeLessThanOrEqual(on.visible.toTipM + 1e-9);
        },
      ),
      { seed: 11, numRuns: 500 },
    );
  });
});

describe('kept-free zones', () => {
  it('widen each ferrule by the clear distance, 25 mm beside a spigot and 10 mm elsewhere', () => {
    const blank = assembleBlank([
      section('u', 1, { joint: spigot }),
      section('m', 1, { joint: sleeveJoint(0.05) }),
      section('l', 1),
    ]);
    const [first, second] = keepOutZones(blank);
    expect(first.fromTipM).toBeCloseTo(1 - 0.025, 12);
    expect(first.toTipM).toBeCloseTo(1.006 + 0.025, 12);
    expect(second.toTipM - second.fromTipM).toBeCloseTo(0.07, 12);
    expect(keepOutZones(blank, 0)[1].toTipM).toBeCloseTo(blank.joints[1].seat.toTipM, 12);
  });
});
