/** The bench as the fit takes it, and where each row of the request came from. */
import { type AssembledBlank, assembleBlank } from '../bench/assemble.ts';
import type { Bench, ClampSetup, ClampTest, Section, Setup, SpanSetup } from '../bench/bench.ts';
import { type DiameterRow, diameterProfile, diameterRowAt } from '../bench/diameter-profile.ts';
import { axisDrops } from '../bench/edge.ts';
import { stiffZones } from '../bench/ferrule-zones.ts';
import { liesInFront } from '../bench/flag-check.ts';
import { oddOf } from '../bench/odd-diameter.ts';
import type { Finding } from '../finding.ts';
import { countedInStand, curveFits } from './curves-from-bench.ts';
import type { FitRows } from './fit-rows.ts';
import type { FitBlank, FitRequest, FitSection, FitSetup, FitTest } from './request.ts';
import { stopwatchSigmaS } from './swing-data.ts';

export interface BenchFit {
  request: FitRequest;
  rows: FitRows[];
  /** The section behind `blank.sections[i]`. */
  sectionIds: string[];
  /** The row behind `blank.diameters[i]`. */
  diameterIds: string[];
  /** The count behind `blank.swings[i]`. */
  swingIds: string[];
}

/** A checked bench; set-ups and tests without a reading are left out. */
export function benchFit(bench: Bench): BenchFit {
  const blank = assembleBlank(bench.sections);
  const profile = diameterProfile(bench.sections, blank);
  const taken = [
    ...bench.setups.map((setup) => setupFit(setup, profile)),
    ...curveFits(bench.curves ?? [], blank.lengthM),
  ].filter(({ rows }) => rows.tests.length > 0);
  const fitted = blankFit(bench, blank, profile);
  return {
    request: { blank: fitted, setups: taken.map(({ setup }) => setup) },
    rows: taken.map(({ rows }) => rows),
    sectionIds: bench.sections.map(({ id }) => id),
    diameterIds: (fitted.diameters ?? []).map(
      ({ fromTipM }) => diameterRowAt(bench.sections, blank, fromTipM)?.id ?? '',
    ),
    swingIds: heldSwings(bench, blank).map(({ id }) => id),
  };
}

/** A fit's finding at the record's field, pictures counted as they were taken. */
export function inRecord(fit: BenchFit, found: Finding): Finding {
  return { ...countedInStand(fit.request, found), path: recordPath(fit, found.path) };
}

/**
 * The record's field behind the path of a fit's finding: a reading at its drop, a whole test at its weight, a
 * set-up at its clamp, a section at its mass or balance point, a diameter at its row; other paths unchanged.
 */
export function recordPath(fit: BenchFit, path: string): string {
  if (path === 'blank.massKg') return 'blank/-/mass';
  const [, swing] = /^blank\.swings\[(\d+)\]/.exec(path) ?? [];
  if (swing !== undefined) return `swings/${fit.swingIds[Number(swing)]}/counted`;
  const [, diameter] = /^blank\.diameters\[(\d+)\]/.exec(path) ?? [];
  const diameterId = fit.diameterIds[Number(diameter)];
  if (diameterId) return `diameters/${diameterId}/outside`;
  return sectionPath(fit.sectionIds, path) ?? setupPath(fit.rows, path) ?? path;
}

function sectionPath(sectionIds: readonly string[], path: string): string | undefined {
  const [, index, field] = /^blank\.sections\[(\d+)\]\.(massKg|balanceFromTipM)$/.exec(path) ?? [];
  const id = sectionIds[Number(index)];
  return id && `sections/${id}/${field === 'massKg' ? 'mass' : 'balanceFromOwnTip'}`;
}

function setupPath(rows: readonly FitRows[], path: string): string | undefined {
  const [, setup, test, reading] =
    /^setups\[(\d+)\](?:\.tests\[(\d+)\])?(?:\.readings\[(\d+)\])?/.exec(path) ?? [];
  const found = rows[Number(setup)];
  if (!found) return undefined;
  if (found.curve) return `loadTests/${found.setupId}/hung`;
  const [, check] = /\.flagChecks\[(\d+)\]/.exec(path) ?? [];
  if (check !== undefined) return `flagChecks/${found.flagChecks?.[Number(check)]}/fromClamp`;
  const testRows = found.tests[Number(test)];
  if (!testRows) return `setups/${found.setupId}/clampFromTip`;
  const readingId = testRows.readings[Number(reading)];
  return readingId === undefined ? `tests/${testRows.testId}/hung` : `readings/${readingId}/drop`;
}

/** A diameter that the bench's check has named is left out. */
function blankFit(bench: Bench, blank: AssembledBlank, profile: DiameterRow[]): FitBlank {
  const odd = oddOf(bench.sections, blank);
  return {
    lengthM: blank.lengthM,
    diameters: profile.filter(({ fromTipM }) => fromTipM !== odd?.fromTipM),
    ...massFit(bench, blank),
    ...swingFit(bench, blank),
    stiffZones: stiffZones(blank),
  };
}

function swingFit(bench: Bench, blank: AssembledBlank): Pick<FitBlank, 'swings'> {
  const swings = heldSwings(bench, blank).map(({ clampFromTipM, counted, seconds }) => ({
    clampFromTipM,
    hz: counted / seconds,
    sigmaHz: ((counted / seconds) * stopwatchSigmaS) / seconds,
  }));
  return swings.length > 0 ? { swings } : {};
}

/** What is held within a hand's breadth of the tip swings too fast to be counted. */
function heldSwings({ swings = [], handle }: Bench, { lengthM }: AssembledBlank) {
  const front = lengthM - handle.gripFrontFromButtM;
  return swings
    .map((swing) => ({ ...swing, clampFromTipM: Math.min(lengthM, swing.clampFromTipM ?? front) }))
    .filter(({ clampFromTipM }) => clampFromTipM > 0.1);
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
  const flagChecks = (setup.flagChecks ?? []).filter((check) => liesInFront(check, clampFromTipM));
  return {
    setup: {
      nominalAngleRad,
      tiltSigmaRad,
      clampFromTipM,
      turnedRad,
      tests: tests.map((test) => testFit(setup, test, profile)),
      ...(flagChecks.length > 0
        ? { flagChecks: flagChecks.map(({ fromTipM, fromClampM }) => ({ fromTipM, fromClampM })) }
        : {}),
    },
    rows: {
      setupId: setup.id,
      tests: tests.map(({ id, readings }) => ({
        testId: id,
        readings: readings.map((reading) => reading.id),
      })),
      flagChecks: flagChecks.map(({ id }) => id),
    },
  };
}

function testFit(setup: ClampSetup, test: ClampTest, profile: readonly DiameterRow[]): FitTest {
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
