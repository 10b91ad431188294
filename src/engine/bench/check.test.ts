import { describe, expect, it } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import type { Bench, ClampSetup } from './bench.ts';
import type { BenchFinding } from './bench-finding.ts';
import { checkBench } from './check.ts';
import { checkFerrulesBound } from './ferrule-gate.ts';
import { checkFloor, clampHeightNeeded } from './floor.ts';
import { type Material, materials } from './materials.ts';
import { loadsToHang, strainLevels, strainVerdict, surfaceStrainPercent } from './strain.ts';
import { fourPiece, sleeveJoint } from './test-bench.ts';

function findings(change: (bench: Bench) => void) {
  const bench = fourPiece();
  change(bench);
  return checkBench(bench);
}
const clamp = (bench: Bench) => bench.setups[0] as ClampSetup;

describe('findings name the field, the value and the remedy', () => {
  it('a clean bench has none', () => {
    expect(checkBench(fourPiece())).toEqual([]);
  });

  it.each<
    [
      string,
      (bench: Bench) => void,
      string,
      'stop' | 'doubt',
      Pick<BenchFinding, 'code'> & { values?: object },
    ]
  >([
    ['an empty bench', (b) => b.sections.splice(0), 'sections', 'stop', { code: 'bench/empty' }],
    [
      'a drop larger than the blank is long',
      (b) => {
        clamp(b).tests[1].readings[0].dropM = 9.2;
      },
      'readings/r2/drop',
      'stop',
      { code: 'bench/drop-over-length', values: { dropM: 9.2, beyondM: expect.closeTo(2.59, 3) } },
    ],
    [
      'a weight in the wrong unit',
      (b) => {
        clamp(b).tests[1].hungKg = 100;
      },
      'tests/t1/hung',
      'stop',
      { code: 'bench/weight-unit', values: { massKg: 100 } },
    ],
    [
      'a section mass in the wrong unit',
      (b) => {
        b.sections[0].massKg = 4.5;
      },
      'sections/a/mass',
      'stop',
      { code: 'bench/section-mass', values: { section: 'section a', massKg: 4.5 } },
    ],
    [
      'sections that do not add up to the whole',
      (b) => {
        b.massKg = 0.045;
      },
      'blank/-/mass',
      'doubt',
      { code: 'bench/masses-disagree', values: { sumKg: expect.closeTo(0.0403, 6), wholeKg: 0.045 } },
    ],
    [
      'an overlap longer than the section',
      (b) => {
        b.sections[0].joint = sleeveJoint(0.8);
      },
      'sections/a/overlap',
      'stop',
      { code: 'bench/overlap-over-section', values: { overlapM: 0.8 } },
    ],
    [
      'ferrules that overlap each other',
      (b) => {
        b.sections[0].joint = sleeveJoint(0.4);
        b.sections[1].joint = sleeveJoint(0.4);
      },
      'sections/b/overlap',
      'stop',
      { code: 'bench/joints-meet', values: { section: 'section b' } },
    ],
    [
      'a joint left out',
      (b) => {
        b.sections[0].joint = undefined;
      },
      'sections/a/joint',
      'stop',
      { code: 'bench/joint-unsaid' },
    ],
    [
      'a balance point outside its section',
      (b) => {
        b.sections[1].balanceFromOwnTipM = 0.9;
      },
      'sections/b/balanceFromOwnTip',
      'stop',
      { code: 'bench/balance-off-section', values: { balanceM: 0.9 } },
    ],
    [
      'a diameter that grows towards the tip',
      (b) => {
        b.sections[1].diameters[1].outsideM = 0.0032;
      },
      'diameters/b1/outside',
      'doubt',
      { code: 'bench/diameters-taper', values: { lowerOutsideM: 0.0032 } },
    ],
    [
      'a diameter off its section',
      (b) => {
        b.sections[1].diameters[2].fromOwnTipM = 1.2;
      },
      'diameters/b2/fromOwnTip',
      'stop',
      { code: 'bench/diameter-off-section', values: { fromOwnTipM: 1.2 } },
    ],
    [
      'a reading behind the clamp',
      (b) => {
        clamp(b).tests[0].readings[1].fromTipM = 2.7;
      },
      'readings/r1/fromTip',
      'stop',
      { code: 'bench/reading-behind-clamp', values: { fromTipM: 2.7 } },
    ],
    [
      'a clamp beyond the butt',
      (b) => {
        clamp(b).clampFromTipM = 3;
      },
      'setups/s/clampFromTip',
      'stop',
      { code: 'bench/clamp-off-blank', values: { clampM: 3 } },
    ],
    [
      'a drop that changes faster than the blank is long',
      (b) => {
        clamp(b).tests[1].readings[1].dropM = 0.2;
      },
      'readings/r2/drop',
      'doubt',
      { code: 'bench/drops-jump', values: { upperM: 0 } },
    ],
    [
      'weights that were swapped',
      (b) => {
        const [light, heavy] = clamp(b).tests;
        [light.readings, heavy.readings] = [heavy.readings, light.readings];
      },
      'tests/t1/hung',
      'doubt',
      { code: 'bench/heavier-drops-less', values: { worse: 2, of: 2 } },
    ],
    [
      'a grip over most of the blank',
      (b) => {
        b.handle.gripFrontFromButtM = 2.4;
      },
      'handle/-/gripFront',
      'stop',
      { code: 'bench/grip-over-blank', values: { gripM: 2.4 } },
    ],
  ])('%s', (_, change, path, severity, said) => {
    const found = findings(change);
    const match = found.find((one) => one.path === path && one.severity === severity);
    expect(match, JSON.stringify(found)).toMatchObject({ path, severity });
    expect(match).toMatchObject(said);
  });

  it('does not look at stations while the sections make no sense', () => {
    const found = findings((bench) => {
      bench.sections[0].lengthM = 0;
      clamp(bench).tests[1].readings[0].dropM = 99;
    });
    expect(found.map(({ path }) => path)).toEqual([
      'sections/a/length',
      'sections/a/balanceFromOwnTip',
      'sections/a/overlap',
    ]);
  });
});

describe('floor', () => {
  const level = { nominalAngleRad: 0, freeLengthM: 2.5, tipDropM: 0.92 };
  it('a level clamp needs the drop, the hook and a hand of room', () => {
    expect(clampHeightNeeded(level)).toBeCloseTo(0.92 + 0.15, 12);
    expect(checkFloor({ ...level, path: 'setups/s/clampHeight', clampHeightM: 1.2 })).toEqual([]);
    const [found] = checkFloor({ ...level, path: 'setups/s/clampHeight', clampHeightM: 0.9 });
    expect(found.values).toMatchObject({ heightM: 0.9 });
    expect(inWords(found)).toMatch(/1070 mm .*900 mm.* 920 mm/);
  });
  it('pointing the blank up gains room', () => {
    expect(clampHeightNeeded({ ...level, nominalAngleRad: 0.5 })).toBeLessThan(0);
  });
});

describe('caution', () => {
  it('heavy loads on unbound sleeves ask for binding first', () => {
    const bench = fourPiece();
    const load = { path: 'ladder/x/load', massKg: 0.5, thirdLoadKg: 0.11 };
    expect(inWords(checkFerrulesBound(bench, load)[0])).toMatch(/500 g.*110 g/);
    expect(checkFerrulesBound(bench, { ...load, massKg: 0.1 })).toEqual([]);
    expect(checkFerrulesBound({ ...bench, ferrulesBound: true }, load)).toEqual([]);
  });
  it('loads are hung up to the first that strains to the caution level', () => {
    const levels = strainLevels({ material: 'carbon' });
    expect(loadsToHang([0.1, 0.2, 0.35, 0.3], levels)).toBe(2);
    expect(loadsToHang([0.1, 0.2], levels)).toBe(2);
    expect(loadsToHang([0.5], levels)).toBe(0);
  });
  it('no material’s levels stand above the published strength that they are drawn from', () => {
    // compression strength over modulus, %: sources at materials.ts; bamboo from memory
    const published = {
      carbon: 0.56,
      'carbon-standard': 0.56,
      'carbon-intermediate': 0.56,
      'carbon-high': 0.31,
      glass: 1.5,
      bamboo: 0.5,
      unknown: 0.56,
    };
    for (const [material, { strain }] of Object.entries(materials)) {
      expect(strain.cautionPercent).toBeLessThan(strain.stopPercent);
      expect(strain.stopPercent).toBeLessThan(published[material as Material]);
    }
  });
  it('surface strain is curvature times half the diameter, set against the material or the builder', () => {
    expect(surfaceStrainPercent(-1, 0.005)).toBeCloseTo(0.25, 12);
    const carbon = strainLevels({ material: 'carbon' });
    expect(strainVerdict(0.2, carbon)).toBe('within');
    expect(strainVerdict(0.4, carbon)).toBe('caution');
    expect(strainVerdict(0.5, carbon)).toBe('stop');
    expect(strainVerdict(0.4, strainLevels({ material: 'carbon-high' }))).toBe('stop');
    expect(strainVerdict(0.4, strainLevels({ material: 'unknown' }))).toBe('caution');
    expect(strainVerdict(0.45, strainLevels({ material: 'glass' }))).toBe('within');
    expect(strainLevels({ material: 'carbon', strainStopPercent: 0.45 })).toMatchObject({
      stopPercent: 0.45,
      own: true,
    });
  });
});
