/**
 * Where tip and flags come to stand under a weight tied to the tip: the prediction that a builder puts to the
 * proof before he trusts a layout.
 *
 * Frame: origin where the blank leaves its hold at the front of the grip, x level and outwards, y up. Bend:
 * bend/bend.ts. Uncertainty: the same bend with the whole stiffness at the lower and at the upper edge of its
 * 95 % band; since the blank cannot be off by as much everywhere at once in one direction, the reach is a
 * careful one. Errors of the butt's angle and of the pencil are not in it; see judge-proof.ts.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { Reason } from '../finding.ts';
import { standardGravity } from '../units/gravity.ts';
import { loadTestReason } from './join-kinds.ts';

interface ProofRequest {
  /** The whole blank as fitted. */
  tables: BlankTables;
  /** The stiffness's band; left out where nothing was hung on the blank yet. */
  band?: readonly { fromTipM: number; lowNm2: number; highNm2: number }[];
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
  /** How far the farther edge of the band lies off, each ≥ 0; undefined without a band. */
  reach?: { outM: number; upM: number };
}
export type ProofPrediction =
  | { status: 'predicted'; places: PredictedPlace[] }
  | { status: 'not-predicted'; reason: Reason };

/** Tip first, then the flags in their order. */
export function predictPlaces(request: ProofRequest): ProofPrediction {
  const { tables, band } = request;
  const best = placesOf(request, tables.stiffness);
  if (!best) return { status: 'not-predicted', reason: loadTestReason('load-test/bent-too-far', {}) };
  const edges = band && [
    placesOf(request, edgeOf(band, 'lowNm2')),
    placesOf(request, edgeOf(band, 'highNm2')),
  ];
  const places = best.map((place, i) => ({
    ...place,
    reach: reachOf(
      place,
      edges?.map((edge) => edge?.[i]),
    ),
  }));
  return { status: 'predicted', places };
}

/** Three flags where the bend shows best: at a fifth, two fifths and three fifths of the free length. */
export function commonFlags(freeLengthM: number): number[] {
  return [0.2, 0.4, 0.6].map((share) => Math.round(share * freeLengthM * 100) / 100);
}

function edgeOf(band: NonNullable<ProofRequest['band']>, edge: 'lowNm2' | 'highNm2') {
  return band.map((row) => ({ fromTipM: row.fromTipM, EINm2: row[edge] }));
}

function placesOf(request: ProofRequest, stiffness: BlankTables['stiffness']): PredictedPlace[] | undefined {
  const { tables, freeLengthM, buttAngleRad, hungKg, masses, flagsFromTipM } = request;
  const { status, points } = bend({
    rod: freeRod({ ...tables, stiffness }, freeLengthM),
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

function reachOf(best: PredictedPlace, edges: readonly (PredictedPlace | undefined)[] | undefined) {
  if (!edges || edges.some((edge) => edge === undefined)) return undefined;
  const farthest = (of: 'outM' | 'upM') => Math.max(...edges.map((edge) => Math.abs(edge![of] - best[of])));
  return { outM: farthest('outM'), upM: farthest('upM') };
}
