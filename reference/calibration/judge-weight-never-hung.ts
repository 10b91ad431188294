/** Where tip and flags hang under half as much again as the heaviest weight on the bench, foretold and on the true rod. */

import type { BlankTables } from '../../src/engine/bench/free-rod.ts';
import { nextProofKg } from '../../src/engine/flow/next-proof.ts';
import { commonFlags, predictPlaces } from '../../src/engine/load-test/predict-places.ts';
import type { FitClampSetup, FitRequest } from '../../src/engine/stiffness/request.ts';
import { bentByPicard } from '../../test/support/picard-bend.ts';
import { type Curve, placeOn, type TrueBlank } from '../../test/support/simulated-bench.ts';

export interface WeightNeverHung {
  /** Seen less foretold over its ±: out and up, of the tip and of the flags. */
  tip: number[];
  flags: number[];
  /** ± of the tip's height as a share of the free length. */
  tipReach: number;
}

interface ProofQuestion {
  blank: TrueBlank;
  bench: FitRequest;
  tables: BlankTables;
  blanksThatFit: readonly BlankTables[];
  freeLengthM: number;
}

const buttAngleRad = Math.PI / 4;

/** Undefined where nothing hung on the bench, or no bend is found. The truth by statics and geometry in turn. */
export function judgeWeightNeverHung(question: ProofQuestion): WeightNeverHung | undefined {
  const { blank, bench, freeLengthM } = question;
  const hungKg = nextProofKg(weightsOf(bench), []);
  if (hungKg === undefined) return undefined;
  const flagsFromTipM = commonFlags(freeLengthM);
  const foretold = predictPlaces({ ...question, buttAngleRad, hungKg, flagsFromTipM });
  if (foretold.status !== 'predicted') return undefined;
  const curve = hungOn(blank, freeLengthM, hungKg);
  if (!curve) return undefined;
  const off = foretold.places.map(({ fromTipM, outM, upM, reach }) => {
    const seen = placeOn(curve, fromTipM);
    return reach ? [(seen.xM - outM) / reach.outM, (seen.yM - upM) / reach.upM] : [];
  });
  const [tip, ...flags] = off;
  return { tip, flags: flags.flat(), tipReach: (foretold.places[0].reach?.upM ?? 0) / freeLengthM };
}

function hungOn(blank: TrueBlank, clampFromTipM: number, massKg: number): Curve | undefined {
  const hung = [{ fromTipM: 0, massKg }];
  try {
    return bentByPicard(blank, { buttAngleRad, clampFromTipM, hung, givesRadPerNm: 0 });
  } catch {
    // the loop finds none: nothing is judged
    return undefined;
  }
}

function weightsOf({ setups }: FitRequest): number[] {
  return (setups as FitClampSetup[]).flatMap(({ tests }) =>
    tests.map(({ hung = [] }) => hung.reduce((sum, { massKg }) => sum + massKg, 0)),
  );
}
