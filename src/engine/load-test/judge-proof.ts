/**
 * What was seen against what was predicted, place by place, and the score.
 *
 * A place agrees where both its height and its distance lie within √(reach² + pencil²) of the prediction.
 * pencil = 5 mm covers the mark on the wall and the swing of the weight: judgement, no source. An error of the
 * butt's angle is not covered (1° moves the tip of a straight 2.5 m rod by 44 mm); the sheet asks for it.
 */
import type { PredictedPlace } from './predict-places.ts';

export interface SeenPlace {
  outM?: number;
  upM?: number;
}
interface JudgedPlace {
  /** Seen less predicted; undefined where it was not looked at. */
  offOutM?: number;
  offUpM?: number;
  verdict: 'agrees' | 'off' | 'not-seen' | 'no-measure';
}
export interface ProofVerdict {
  places: JudgedPlace[];
  /** Places with both figures and a stated reach. */
  counted: number;
  agreed: number;
  /** Miss over what was allowed, of every counted place. */
  ratios: number[];
  /** The largest of them; 0 with none. */
  worst: number;
  /** Whether the tip hung lower or higher than predicted, where it was off. */
  tip?: 'lower' | 'higher';
}

export const pencilM = 0.005;

/** `seen[i]` belongs to `predicted[i]`, the tip first. */
export function judgeProof(predicted: readonly PredictedPlace[], seen: readonly SeenPlace[]): ProofVerdict {
  if (predicted.length !== seen.length) throw new Error(`${seen.length} places seen of ${predicted.length}`);
  const misses = predicted.map((place, i) => missOf(place, seen[i]));
  const places = misses.map(({ judged }) => judged);
  const ratios = misses.flatMap(({ ratio }) => (ratio === undefined ? [] : [ratio]));
  const [tip] = places;
  return {
    places,
    counted: ratios.length,
    agreed: places.filter(({ verdict }) => verdict === 'agrees').length,
    ratios,
    worst: Math.max(0, ...ratios),
    tip: tip?.verdict === 'off' && tip.offUpM ? (tip.offUpM < 0 ? 'lower' : 'higher') : undefined,
  };
}

function missOf(
  { outM, upM, reach }: PredictedPlace,
  seen: SeenPlace,
): { judged: JudgedPlace; ratio?: number } {
  const offOutM = seen.outM === undefined ? undefined : seen.outM - outM;
  const offUpM = seen.upM === undefined ? undefined : seen.upM - upM;
  if (offOutM === undefined || offUpM === undefined) {
    return { judged: { offOutM, offUpM, verdict: 'not-seen' } };
  }
  if (!reach) return { judged: { offOutM, offUpM, verdict: 'no-measure' } };
  const ratio = Math.max(
    Math.abs(offOutM) / Math.hypot(reach.outM, pencilM),
    Math.abs(offUpM) / Math.hypot(reach.upM, pencilM),
  );
  return { judged: { offOutM, offUpM, verdict: ratio <= 1 ? 'agrees' : 'off' }, ratio };
}

/** The weights hung at the tip on the bench within 2 % of this one: then it would prove nothing new. */
export function hungBefore(hungKg: number, testedKg: readonly number[]): number | undefined {
  return testedKg.find((tested) => tested > 0 && Math.abs(tested - hungKg) <= 0.02 * hungKg);
}
