/**
 * A clamp that does not stand where it was said to: two or more flags were measured from the tip and from the clamp, and
 * all of them miss it by as much. A flag that is off by itself misses alone, and is the fit's to find.
 */

import type { Finding } from '../finding.ts';
import { fitFound } from './fit-kinds.ts';
import type { FitClampSetup, FitRequest, FitSetup } from './request.ts';

/** Two tapes agree so far; what they miss by beyond it, and agree on, is the clamp's. */
const tapesAgreeM = 0.009;
const leastMissM = 0.012;

/** The clamps moved to where the tapes say, with their readings right at the clamp, and said. */
export function clampsByTapes(request: FitRequest): { request: FitRequest; findings: Finding[] } {
  const findings: Finding[] = [];
  const setups = request.setups.map((setup, s): FitSetup => {
    if (setup.kind === 'span' || setup.kind === 'curve') return setup;
    const statedM = setup.clampFromTipM ?? request.blank.lengthM;
    const byM = missedBy(setup, statedM);
    if (byM === undefined || statedM - byM > request.blank.lengthM) return setup;
    findings.push(sayMoved(s, statedM, statedM - byM, setup.flagChecks?.length ?? 0));
    return clampMoved(setup, statedM, statedM - byM);
  });
  return findings.length > 0 ? { request: { ...request, setups }, findings } : { request, findings };
}

/** Undefined where they agree with the clamp, or not with each other. */
function missedBy({ flagChecks = [] }: FitClampSetup, clampM: number): number | undefined {
  const misses = flagChecks.map(({ fromTipM, fromClampM }) => clampM - fromClampM - fromTipM);
  misses.sort((a, b) => a - b);
  const middle = misses[misses.length >> 1];
  const agree = misses.length >= 2 && misses[misses.length - 1] - misses[0] < 2 * tapesAgreeM;
  return agree && Math.abs(middle) > leastMissM ? middle : undefined;
}

function clampMoved(setup: FitClampSetup, fromM: number, toM: number): FitClampSetup {
  const tests = setup.tests.map((test) => ({
    ...test,
    readings: test.readings.map((reading) =>
      reading.fromTipM === fromM || reading.fromTipM > toM ? { ...reading, fromTipM: toM } : reading,
    ),
  }));
  return { ...setup, clampFromTipM: toM, tests };
}

function sayMoved(setup: number, statedM: number, toldM: number, flags: number): Finding {
  return fitFound(`setups[${setup}].clampFromTipM`, 'fit/clamp-moved', { statedM, toldM, flags });
}
