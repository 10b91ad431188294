import { describe, expect, it } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import type { Bench, ClampSetup } from './bench.ts';
import { checkBench } from './check.ts';
import { checkFerrulesBound } from './ferrule-gate.ts';
import { checkFloor, clampHeightNeeded } from './floor.ts';
import { strainLevels, strainVerdict, surfaceStrainPercent } from './strain.ts';
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

  it.each<[string, (bench: Bench) => void, string, 'stop' | 'doubt', RegExp]>([
    ['an empty bench', (b) => b.sections.splice(0), 'sections', 'stop', /add the sections/],
    [
      'a drop larger than the blank is long',
      (b) => {
        clamp(b).tests[1].readings[0].dropM = 9.2;
      },
      'readings/r2/drop',
      'stop',
      /9200 mm .* more than the 2590 mm .*Check the unit/,
    ],
    [
      'a weight in the wrong unit',
      (b) => {
        clamp(b).tests[1].hungKg = 100;
      },
      'tests/t1/hung',
      'stop',
      /100 kg .*did you mean 100 g/,
    ],
    [
      'a section mass in the wrong unit',
      (b) => {
        b.sections[0].massKg = 4.5;
      },
      'sections/a/mass',
      'stop',
      /Did you mean 4.5 g/,
    ],
    [
      'sections that do not add up to the whole',
      (b) => {
        b.massKg = 0.045;
      },
      'blank/-/mass',
      'doubt',
      /40.3 g, the whole blank 45 g/,
    ],
    [
      'an overlap longer than the section',
      (b) => {
        b.sections[0].joint = sleeveJoint(0.8);
      },
      'sections/a/overlap',
      'stop',
      /800 mm/,
    ],
    [
      'ferrules that overlap each other',
      (b) => {
        b.sections[0].joint = sleeveJoint(0.4);
        b.sections[1].joint = sleeveJoint(0.4);
      },
      'sections/b/overlap',
      'stop',
      /overlap each other/,
    ],
    [
      'a joint left out',
      (b) => {
        b.sections[0].joint = undefined;
      },
      'sections/a/joint',
      'stop',
      /sleeve, spigot/,
    ],
    [
      'a balance point outside its section',
      (b) => {
        b.sections[1].balanceFromOwnTipM = 0.9;
      },
      'sections/b/balanceFromOwnTip',
      'stop',
      /900 mm/,
    ],
    [
      'a diameter that grows towards the tip',
      (b) => {
        b.sections[1].diameters[1].outsideM = 0.0032;
      },
      'diameters/b1/outside',
      'doubt',
      /grows towards the tip/,
    ],
    [
      'a diameter off its section',
      (b) => {
        b.sections[1].diameters[2].fromOwnTipM = 1.2;
      },
      'diameters/b2/fromOwnTip',
      'stop',
      /1200 mm/,
    ],
    [
      'a reading behind the clamp',
      (b) => {
        clamp(b).tests[0].readings[1].fromTipM = 2.7;
      },
      'readings/r1/fromTip',
      'stop',
      /clamp/,
    ],
    [
      'a clamp beyond the butt',
      (b) => {
        clamp(b).clampFromTipM = 3;
      },
      'setups/s/clampFromTip',
      'stop',
      /3000 mm/,
    ],
    [
      'a drop that changes faster than the blank is long',
      (b) => {
        clamp(b).tests[1].readings[1].dropM = 0.2;
      },
      'readings/r2/drop',
      'doubt',
      /misread/,
    ],
    [
      'weights that were swapped',
      (b) => {
        const [light, heavy] = clamp(b).tests;
        [light.readings, heavy.readings] = [heavy.readings, light.readings];
      },
      'tests/t1/hung',
      'doubt',
      /swapped/,
    ],
    [
      'a grip over most of the blank',
      (b) => {
        b.handle.gripFrontFromButtM = 2.4;
      },
      'handle/-/gripFront',
      'stop',
      /grip/,
    ],
  ])('%s', (_, change, path, severity, message) => {
    const found = findings(change);
    const match = found.find((one) => one.path === path && one.severity === severity);
    expect(match, JSON.stringify(found)).toMatchObject({ path, severity });
    expect(inWords(match)).toMatch(message);
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
    expect(inWords(found)).toMatch(/920 mm.* 1070 mm .*900 mm/);
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
  it('surface strain is curvature times half the diameter, set against the material or the builder', () => {
    expect(surfaceStrainPercent(-1, 0.005)).toBeCloseTo(0.25, 12);
    const carbon = strainLevels({ material: 'carbon' });
    expect(strainVerdict(0.2, carbon)).toBe('within');
    expect(strainVerdict(0.3, carbon)).toBe('caution');
    expect(strainVerdict(0.45, carbon)).toBe('stop');
    expect(strainVerdict(0.45, strainLevels({ material: 'glass' }))).toBe('within');
    expect(strainLevels({ material: 'carbon', strainStopPercent: 0.5 })).toMatchObject({
      stopPercent: 0.5,
      own: true,
    });
  });
});
