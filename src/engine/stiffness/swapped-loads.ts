import type { PreparedClamp, PreparedRequest, PreparedTest } from './prepared-request.ts';

/** Two tests of one set-up whose weights were noted the other way round. */
export interface SwappedPair {
  setup: number;
  first: number;
  second: number;
}

/**
 * Pairs of tests of which the one with the smaller moment at the clamp hangs lower: a blank never does that.
 * Compared at the stations that both read.
 */
export function contraryPairs({ blank, setups }: PreparedRequest): SwappedPair[] {
  return setups.flatMap((setup, s) => {
    if (setup.kind === 'span') return [];
    const clamp = setup.clampFromTipM ?? blank.lengthM;
    const pairs: SwappedPair[] = [];
    for (let second = 1; second < setup.tests.length; second++) {
      for (let first = 0; first < second; first++) {
        if (areContrary(setup, clamp, first, second)) pairs.push({ setup: s, first, second });
      }
    }
    return pairs;
  });
}

function areContrary({ tests }: PreparedClamp, clamp: number, first: number, second: number): boolean {
  const moment = momentOf(tests[second], clamp) - momentOf(tests[first], clamp);
  const differences = tests[second].readings.flatMap(({ fromTipM, dropM }) => {
    const match = tests[first].readings.find((other) => Math.abs(other.fromTipM - fromTipM) < 1e-6);
    return match ? [dropM - match.dropM] : [];
  });
  if (moment === 0 || differences.length === 0) return false;
  const mean = differences.reduce((sum, d) => sum + d, 0) / differences.length;
  return mean * Math.sign(moment) < 0;
}

function momentOf({ hung = [] }: PreparedTest, clamp: number): number {
  return hung.reduce((sum, { fromTipM, massKg }) => sum + massKg * Math.max(0, clamp - fromTipM), 0);
}

export function swapLoads(request: PreparedRequest, { setup, first, second }: SwappedPair): PreparedRequest {
  const setups = request.setups.map((owner, s) => {
    if (s !== setup || owner.kind === 'span') return owner;
    const tests = owner.tests.map((test, t) => {
      if (t === first) return { ...test, hung: owner.tests[second].hung };
      if (t === second) return { ...test, hung: owner.tests[first].hung };
      return test;
    });
    return { ...owner, tests };
  });
  return { ...request, setups };
}
