/**
 * The bench as the stiffness fit takes it: the shape of the `fit` request in the engine's line protocol, and
 * where each of its rows came from.
 */
import { type AssembledBlank, assembleBlank } from './assemble.ts';
import type { Bench, ClampSetup, ClampTest, Section, Setup, SpanSetup } from './bench.ts';
import { type DiameterRow, diameterProfile } from './diameter-profile.ts';
import { axisDrops } from './edge.ts';
import { stiffZones } from './ferrule-zones.ts';

export interface FitRequest {
  blank: FitBlank;
  setups: FitSetup[];
}
export interface FitBlank {
  lengthM: number;
  diameters: readonly DiameterRow[];
  /** The blank from the tip to `lengthM`; or its sections one by one, which may overlap in ferrules. */
  massKg?: number;
  sections?: readonly FitSection[];
  /** Prior standard deviation of the natural curvature; left out 0.02, 0 for a straight blank. */
  sweepSigmaPerM?: number;
  /** Zones whose stiffness the builder stated as a factor on the blank beside them. */
  stiffZones?: readonly { fromTipM: number; toTipM: number; ratio: number }[];
  material?: 'carbon' | 'glass' | 'unknown';
}
export interface FitSection {
  fromTipM: number;
  toTipM: number;
  massKg: number;
  balanceFromTipM?: number;
}
export type FitSetup = FitClampSetup | FitSpanSetup;
export interface FitClampSetup {
  kind?: 'clamp';
  nominalAngleRad: number;
  tiltSigmaRad: number;
  /** Left out: at `lengthM`. */
  clampFromTipM?: number;
  turnedRad?: number;
  tests: readonly FitClampTest[];
}
export interface FitClampTest {
  hung: readonly { fromTipM: number; massKg: number }[];
  /** Of the blank's axis. */
  readings: readonly { fromTipM: number; dropM: number }[];
  sigmaM: number;
}
export interface FitSpanSetup {
  kind: 'span';
  supportsFromTipM: readonly [number, number];
  loadFromTipM: number;
  tests: readonly { massKg: number; sagM: number; sigmaM: number }[];
}

/** Rows of the record behind the request's indices: `rows[setup].tests[test].readings[reading]`. */
export interface FitRows {
  setupId: string;
  tests: { testId: string; readings: string[] }[];
}
export interface BenchFit {
  request: FitRequest;
  rows: FitRows[];
}

/** A checked bench; set-ups and tests without a reading are left out. */
export function benchFit(bench: Bench): BenchFit {
  const blank = assembleBlank(bench.sections);
  const profile = diameterProfile(bench.sections, blank);
  const taken = bench.setups
    .map((setup) => setupFit(setup, profile))
    .filter(({ rows }) => rows.tests.length > 0);
  return {
    request: { blank: blankFit(bench, blank, profile), setups: taken.map(({ setup }) => setup) },
    rows: taken.map(({ rows }) => rows),
  };
}

/** `setups.1.tests.0.readings.3` of a fit's finding as the record's `readings/<row>/drop`; others unchanged. */
export function recordPath(rows: readonly FitRows[], path: string): string {
  const [, setup, test, reading] = /^setups\.(\d+)(?:\.tests\.(\d+))?(?:\.readings\.(\d+))?/.exec(path) ?? [];
  const found = setup === undefined ? undefined : rows[Number(setup)];
  if (!found) return path;
  const testRows = test === undefined ? undefined : found.tests[Number(test)];
  if (!testRows) return `setups/${found.setupId}`;
  const readingId = reading === undefined ? undefined : testRows.readings[Number(reading)];
  return readingId === undefined ? `tests/${testRows.testId}` : `readings/${readingId}/drop`;
}

function blankFit(bench: Bench, blank: AssembledBlank, profile: DiameterRow[]): FitBlank {
  const zones = stiffZones(blank);
  return {
    lengthM: blank.lengthM,
    diameters: profile,
    ...massFit(bench, blank),
    ...(zones.length > 0 ? { stiffZones: zones } : {}),
    material: bench.material,
  };
}

/** Section masses where every section was weighed, since they say where the mass lies; else the whole. */
function massFit(bench: Bench, blank: AssembledBlank): Pick<FitBlank, 'massKg' | 'sections'> {
  if (bench.sections.every(({ massKg }) => massKg !== undefined)) {
    return { sections: bench.sections.map((section, index) => sectionFit(section, blank, index)) };
  }
  return bench.massKg === undefined ? {} : { massKg: bench.massKg };
}

function sectionFit(
  { massKg, balanceFromOwnTipM }: Section,
  blank: AssembledBlank,
  index: number,
): FitSection {
  const { ends } = blank.sections[index];
  const balance =
    balanceFromOwnTipM === undefined ? {} : { balanceFromTipM: ends.fromTipM + balanceFromOwnTipM };
  return { ...ends, massKg: massKg ?? 0, ...balance };
}

function setupFit(setup: Setup, profile: readonly DiameterRow[]): { setup: FitSetup; rows: FitRows } {
  return setup.kind === 'span' ? spanFit(setup) : clampFit(setup, profile);
}

function clampFit(setup: ClampSetup, profile: readonly DiameterRow[]): { setup: FitSetup; rows: FitRows } {
  const tests = setup.tests.filter(({ readings }) => readings.length > 0);
  const { nominalAngleRad, tiltSigmaRad, clampFromTipM, turnedRad } = setup;
  return {
    setup: {
      nominalAngleRad,
      tiltSigmaRad,
      clampFromTipM,
      turnedRad,
      tests: tests.map((test) => testFit(setup, test, profile)),
    },
    rows: {
      setupId: setup.id,
      tests: tests.map(({ id, readings }) => ({
        testId: id,
        readings: readings.map((reading) => reading.id),
      })),
    },
  };
}

function testFit(setup: ClampSetup, test: ClampTest, profile: readonly DiameterRow[]): FitClampTest {
  return {
    hung: test.hungKg > 0 ? [{ fromTipM: test.hungFromTipM, massKg: test.hungKg }] : [],
    readings: axisDrops(setup, test.readings, profile),
    sigmaM: setup.sigmaM,
  };
}

function spanFit(setup: SpanSetup): { setup: FitSetup; rows: FitRows } {
  const tests = setup.tests.map(({ hungKg, sagM }) => ({ massKg: hungKg, sagM, sigmaM: setup.sigmaM }));
  return {
    setup: {
      kind: 'span',
      supportsFromTipM: [setup.supportTipSideM, setup.supportButtSideM],
      loadFromTipM: setup.loadFromTipM,
      tests,
    },
    rows: { setupId: setup.id, tests: setup.tests.map(({ id }) => ({ testId: id, readings: [] })) },
  };
}
