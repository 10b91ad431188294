import type { AssembledBlank } from './assemble.ts';
import type { Bench, ClampSetup, ClampTest, Reading, Setup, SpanSetup } from './bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';

/** No bench hangs these on a blank: above `doubtKg` a slip is likely, above `stopKg` certain. */
const sane = { doubtKg: 3, stopKg: 20 } as const;
/** Readings may disagree by this many standard deviations before the word slip is used. */
const allowedSigmas = 4;
/** An edge may be read, half a thick butt off the axis. */
const halfButtM = 0.012;

export function checkSetups(bench: Bench, blank: AssembledBlank): BenchFinding[] {
  return bench.setups.flatMap((setup) => checkSetup(setup, blank.lengthM));
}

function checkSetup(setup: Setup, lengthM: number): BenchFinding[] {
  const weights = setup.tests.flatMap(({ id, hungKg }) => checkWeight(`tests/${id}/hung`, hungKg));
  const place = setup.kind === 'span' ? checkSpan(setup, lengthM) : checkClamp(setup, lengthM);
  if (place.length > 0 || setup.kind === 'span') return [...weights, ...place];
  return [
    ...weights,
    ...setup.tests.flatMap((test) => checkTest(setup, test)),
    ...checkAcrossTests(setup),
    ...checkFlagChecks(setup),
  ];
}

/** A second tape that cannot be is left out of the fit, which does without it as well. */
function checkFlagChecks({ flagChecks = [], clampFromTipM }: ClampSetup): BenchFinding[] {
  return flagChecks
    .filter(({ fromClampM }) => fromClampM < 0 || fromClampM > clampFromTipM)
    .map(({ id, fromClampM }) =>
      doubtAt(`flagChecks/${id}/fromClamp`, 'bench/flag-check-past-tip', {
        fromClampM,
        clampM: clampFromTipM,
      }),
    );
}

function checkWeight(path: string, massKg: number): BenchFinding[] {
  if (massKg <= sane.doubtKg) return [];
  const found = massKg > sane.stopKg ? stopAt : doubtAt;
  return [found(path, 'bench/weight-unit', { massKg })];
}

function checkClamp(setup: ClampSetup, lengthM: number): BenchFinding[] {
  if (setup.clampFromTipM > 0 && setup.clampFromTipM <= lengthM + 1e-6) return [];
  const values = { clampM: setup.clampFromTipM, lengthM };
  return [stopAt(`setups/${setup.id}/clampFromTip`, 'bench/clamp-off-blank', values)];
}

function checkSpan(setup: SpanSetup, lengthM: number): BenchFinding[] {
  const { supportTipSideM: a, loadFromTipM: load, supportButtSideM: b } = setup;
  if (!(a >= 0 && a < load && load < b && b <= lengthM + 1e-6)) {
    const values = { tipSideM: a, loadM: load, buttSideM: b, lengthM };
    return [stopAt(`setups/${setup.id}/loadFromTip`, 'bench/span-order', values)];
  }
  const spanM = b - a;
  return setup.tests
    .filter(({ sagM }) => Math.abs(sagM) > spanM / 2)
    .map(({ id, sagM }) => stopAt(`tests/${id}/sag`, 'bench/sag-over-span', { sagM, spanM }));
}

function checkTest(setup: ClampSetup, test: ClampTest): BenchFinding[] {
  const found: BenchFinding[] = [];
  if (test.hungKg > 0 && !(test.hungFromTipM >= 0 && test.hungFromTipM < setup.clampFromTipM)) {
    const values = { fromTipM: test.hungFromTipM, clampM: setup.clampFromTipM };
    found.push(stopAt(`tests/${test.id}/hungFromTip`, 'bench/weight-behind-clamp', values));
  }
  const single = test.readings.flatMap((reading) => checkReading(setup, reading));
  return [...found, ...(single.length > 0 ? single : checkNeighbours(setup, test))];
}

/** A blank of fixed length cannot drop further than it reaches beyond the clamp. */
function checkReading(setup: ClampSetup, { id, fromTipM, dropM }: Reading): BenchFinding[] {
  const beyondM = setup.clampFromTipM - fromTipM;
  if (fromTipM < 0 || beyondM < 0) {
    const values = { fromTipM, clampM: setup.clampFromTipM };
    return [stopAt(`readings/${id}/fromTip`, 'bench/reading-behind-clamp', values)];
  }
  if (Math.abs(dropM) <= beyondM + halfButtM + allowedSigmas * setup.sigmaM) return [];
  return [stopAt(`readings/${id}/drop`, 'bench/drop-over-length', { dropM, beyondM })];
}

/** Nor can two stations lie further apart in height than along the blank; the reading that stands out is named. */
function checkNeighbours(setup: ClampSetup, test: ClampTest): BenchFinding[] {
  const inOrder = [...test.readings].sort((a, b) => a.fromTipM - b.fromTipM);
  return inOrder.slice(1).flatMap((lower, index) => {
    const upper = inOrder[index];
    const alongM = lower.fromTipM - upper.fromTipM;
    const dropM = Math.abs(upper.dropM - lower.dropM);
    if (dropM <= alongM + allowedSigmas * setup.sigmaM) return [];
    const values = { upperM: upper.fromTipM, lowerM: lower.fromTipM, dropM };
    return [doubtAt(`readings/${upper.id}/drop`, 'bench/drops-jump', values)];
  });
}

/** At one station of one set-up a heavier weight at the same place drops more. */
function checkAcrossTests(setup: ClampSetup): BenchFinding[] {
  const byWeight = [...setup.tests].sort((a, b) => a.hungKg - b.hungKg);
  return byWeight.slice(1).flatMap((heavy, index) => {
    const light = byWeight[index];
    const samePlace = light.hungKg === 0 || light.hungFromTipM === heavy.hungFromTipM;
    if (!samePlace || heavy.hungKg === light.hungKg) return [];
    const worse = heavy.readings.filter((reading) => {
      const before = light.readings.find(({ fromTipM }) => Math.abs(fromTipM - reading.fromTipM) < 1e-6);
      return before && before.dropM > reading.dropM + allowedSigmas * setup.sigmaM;
    });
    if (worse.length === 0) return [];
    const values = {
      heavyKg: heavy.hungKg,
      lightKg: light.hungKg,
      worse: worse.length,
      of: heavy.readings.length,
    };
    return [doubtAt(`tests/${heavy.id}/hung`, 'bench/heavier-drops-less', values)];
  });
}
