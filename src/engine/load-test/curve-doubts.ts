import type { Reason } from '../finding.ts';
import type { OrientedCurve } from './curve-beside.ts';
import { loadTestReason } from './join-kinds.ts';
import { lengthDoubt } from './length-doubt.ts';

/** By which typed and seen butt angle may differ before it is said: what a phone's level is good for. */
const angleSlackRad = (1.5 * Math.PI) / 180;

/** What makes a comparison with the prediction doubtful: a curve of another length than the rod, or held otherwise. */
export function curveDoubts(
  curve: OrientedCurve,
  { rodM, buttAngleRad }: { rodM: number; buttAngleRad: number | undefined },
): Reason[] {
  const doubts: Reason[] = [];
  const points = curve.places.map(({ outM, upM }) => ({ xM: outM, yM: upM }));
  if (lengthDoubt(points, rodM)) {
    doubts.push(loadTestReason('load-test/curve-length', { curveM: curve.lengthM, rodM }));
  }
  if (buttAngleRad !== undefined && Math.abs(buttAngleRad - curve.buttAngleRad) > angleSlackRad) {
    const values = { seenRad: curve.buttAngleRad, typedRad: buttAngleRad };
    doubts.push(loadTestReason('load-test/butt-angle', values));
  }
  return doubts;
}
