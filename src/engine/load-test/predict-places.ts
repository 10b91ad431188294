/**
 * Where tip and flags come to stand under a weight tied to the tip: the prediction that a builder puts to the
 * proof before he trusts a layout.
 *
 * Frame: origin where the blank leaves its hold at the front of the grip, x level and outwards, y up. Bend:
 * bend/bend.ts. Uncertainty: the same weight on blanks that fit the readings, the ones that the layout's ± is read on
 * (flow/build-sureness.ts); 95 of 100 of them lie within the reach. Errors of the butt's angle and of the pencil are
 * not in it; see judge-proof.ts.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { Reason } from '../finding.ts';
import { quantile } from '../sureness/spread.ts';
import { standardGravity } from '../units/gravity.ts';
import { loadTestReason } from './join-kinds.ts';

interface ProofRequest {
  /** The whole blank as fitted. */
  tables: BlankTables;
  /** As likely as each other after the readings; left out where nothing was hung on the blank yet. */
  blanksThatFit?: readonly BlankTables[];
  /** From the tip to the front of the grip, where the blank is held. */
  freeLengthM: number;
  buttAngleRad: number;
  hungKg: number;
  /** What else hangs on the rod: its guides. */
  masses?: readonly PointMass[];
  /** Stations of the flags; the tip comes by itself. */
  flagsFromTipM: readonly number[];
}
export interface PredictedPlace {
  fromTipM: number;
  outM: number;
  upM: number;
  /** 95 of 100 blanks that fit lie within, each ≥ 0; undefined without any. */
  reach?: { outM: number; upM: number };
}
export type ProofPrediction =
  | { status: 'predicted'; places: PredictedPlace[] }
  | { status: 'not-predicted'; reason: Reason };

/** Tip first, then the flags in their order. */
export function predictPlaces(request: ProofRequest): ProofPrediction {
  const { tables, blanksThatFit = [] } = request;
  const best = placesOf(request, tables);
  if (!best) return { status: 'not-predicted', reason: loadTestReason('load-test/bent-too-far', {}) };
  const others = blanksThatFit.map((blank) => placesOf(request, blank)).filter((bent) => bent !== undefined);
  const places = best.map((place, i) => ({
    ...place,
    reach: reachOf(
      place,
      others.map((bent) => bent[i]),
    ),
  }));
  return { status: 'predicted', places };
}

/** Three flags where the bend shows best: at a fifth, two fifths and three fifths of the free length. */
export function commonFlags(freeLengthM: number): number[] {
  return [0.2, 0.4, 0.6].map((share) => Math.round(share * freeLengthM * 100) / 100);
}

function placesOf(request: ProofRequest, tables: BlankTables): PredictedPlace[] | undefined {
  const { freeLengthM, buttAngleRad, hungKg, masses, flagsFromTipM } = request;
  const { status, points } = bend({
    rod: freeRod(tables, freeLengthM),
    buttAngleRad,
    masses,
    load: { tip: { xN: 0, yN: -hungKg * standardGravity } },
  });
  return status === 'converged' ? [0, ...flagsFromTipM].map((at) => placeAt(points, at)) : undefined;
}

/** Linear between the nodes on both sides; nodes stand about 1 cm apart. */
function placeAt(points: readonly { fromTipM: number; xM: number; yM: number }[], fromTipM: number) {
  const next = points.findIndex((point) => point.fromTipM >= fromTipM);
  if (next < 0) throw new Error(`a flag at ${fromTipM} m stands behind the rod's hold`);
  const [near, far] = [points[Math.max(0, next - 1)], points[next]];
  const share = far === near ? 0 : (fromTipM - near.fromTipM) / (far.fromTipM - near.fromTipM);
  return { fromTipM, outM: near.xM + share * (far.xM - near.xM), upM: near.yM + share * (far.yM - near.yM) };
}

function reachOf(best: PredictedPlace, others: readonly PredictedPlace[]) {
  if (others.length === 0) return undefined;
  const within = (of: 'outM' | 'upM') =>
    quantile(
      others.map((place) => Math.abs(place[of] - best[of])).sort((a, b) => a - b),
      0.95,
    );
  return { outM: within('outM'), upM: within('upM') };
}
