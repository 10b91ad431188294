import type { AssembledBlank } from './assemble.ts';
import type { Bench, ClampSetup, ClampTest, Reading, Setup, SpanSetup } from './bench.ts';
import { type BenchFinding, bothLengths, doubt, grams, stop } from './bench-finding.ts';

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
    .map(({ id, fromClampM }) => {
      const message = `${bothLengths(fromClampM)} from the clamp lies beyond the tip, which is ${bothLengths(clampFromTipM)} away. It is left out; check the unit and measure from the clamp's edge along the blank.`;
      return doubt(`flagChecks/${id}/fromClamp`, message);
    });
}

function checkWeight(path: string, massKg: number): BenchFinding[] {
  if (massKg <= sane.doubtKg) return [];
  const message = `${massKg} kg hangs on the blank; did you mean ${massKg} g?`;
  return [massKg > sane.stopKg ? stop(path, message) : doubt(path, message)];
}

function checkClamp(setup: ClampSetup, lengthM: number): BenchFinding[] {
  if (setup.clampFromTipM > 0 && setup.clampFromTipM <= lengthM + 1e-6) return [];
  const message = `The clamp stands ${bothLengths(setup.clampFromTipM)} from the tip of a blank ${bothLengths(lengthM)} long; measure from the tip to the edge of the clamp.`;
  return [stop(`setups/${setup.id}/clampFromTip`, message)];
}

function checkSpan(setup: SpanSetup, lengthM: number): BenchFinding[] {
  const { supportTipSideM: a, loadFromTipM: load, supportButtSideM: b } = setup;
  if (!(a >= 0 && a < load && load < b && b <= lengthM + 1e-6)) {
    const message = `From the tip down come a support, the load, the other support. Given are ${bothLengths(a)}, ${bothLengths(load)}, ${bothLengths(b)} on ${bothLengths(lengthM)} of blank; correct the one that is out of order.`;
    return [stop(`setups/${setup.id}/loadFromTip`, message)];
  }
  const spanM = b - a;
  return setup.tests
    .filter(({ sagM }) => Math.abs(sagM) > spanM / 2)
    .map(({ id, sagM }) =>
      stop(
        `tests/${id}/sag`,
        `A sag of ${bothLengths(sagM)} on a span of ${bothLengths(spanM)} cannot be; check the unit.`,
      ),
    );
}

function checkTest(setup: ClampSetup, test: ClampTest): BenchFinding[] {
  const found: BenchFinding[] = [];
  if (test.hungKg > 0 && !(test.hungFromTipM >= 0 && test.hungFromTipM < setup.clampFromTipM)) {
    const message = `The weight hangs ${bothLengths(test.hungFromTipM)} from the tip, behind the clamp at ${bothLengths(setup.clampFromTipM)}.`;
    found.push(stop(`tests/${test.id}/hungFromTip`, message));
  }
  const single = test.readings.flatMap((reading) => checkReading(setup, reading));
  return [...found, ...(single.length > 0 ? single : checkNeighbours(setup, test))];
}

/** A blank of fixed length cannot drop further than it reaches beyond the clamp. */
function checkReading(setup: ClampSetup, { id, fromTipM, dropM }: Reading): BenchFinding[] {
  const beyondM = setup.clampFromTipM - fromTipM;
  if (fromTipM < 0 || beyondM < 0) {
    const message = `${bothLengths(fromTipM)} from the tip is not in front of the clamp, which stands at ${bothLengths(setup.clampFromTipM)}.`;
    return [stop(`readings/${id}/fromTip`, message)];
  }
  if (Math.abs(dropM) <= beyondM + halfButtM + allowedSigmas * setup.sigmaM) return [];
  const message = `A drop of ${bothLengths(dropM)} is more than the ${bothLengths(beyondM)} of blank between the clamp and this station. Check the unit and the station.`;
  return [stop(`readings/${id}/drop`, message)];
}

/** Nor can two stations lie further apart in height than along the blank; the reading that stands out is named. */
function checkNeighbours(setup: ClampSetup, test: ClampTest): BenchFinding[] {
  const inOrder = [...test.readings].sort((a, b) => a.fromTipM - b.fromTipM);
  return inOrder.slice(1).flatMap((lower, index) => {
    const upper = inOrder[index];
    const alongM = lower.fromTipM - upper.fromTipM;
    const dropM = Math.abs(upper.dropM - lower.dropM);
    if (dropM <= alongM + allowedSigmas * setup.sigmaM) return [];
    const message = `Between ${bothLengths(upper.fromTipM)} and ${bothLengths(lower.fromTipM)} the drop changes by ${bothLengths(dropM)}, more than the blank is long there. One of the two was misread.`;
    return [doubt(`readings/${upper.id}/drop`, message)];
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
    const message = `With ${grams(heavy.hungKg)} the blank drops less than with ${grams(light.hungKg)} at ${worse.length} of ${heavy.readings.length} stations. Were the weights swapped?`;
    return [doubt(`tests/${heavy.id}/hung`, message)];
  });
}
