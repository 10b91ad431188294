/**
 * Predicted against seen over all blanks of a shop: how often the stated ± held, and what to make of it.
 *
 * A true 95 % ± lets 19 of 20 places agree. Whether fewer did than chance allows is told by the binomial law: the
 * chance of so few or fewer agreeing, were each to agree with 0.95. Below 1 in 40 the ± is too small, and the
 * factor that would have let 19 of 20 agree says by how much. Places of one blank share its errors, so that the
 * true chance is higher: a caution, not a proof.
 */
import { judgeProof, type SeenPlace } from './judge-proof.ts';
import type { PredictedPlace } from './predict-places.ts';

export interface BuildProofs {
  id: string;
  title: string;
  proofs: readonly {
    hungKg: number;
    madeAt: string;
    setAside: string | undefined;
    predicted: readonly PredictedPlace[];
    seen: readonly SeenPlace[];
  }[];
}
interface WrongProof {
  build: string;
  title: string;
  hungKg: number;
  madeAt: string;
  agreed: number;
  counted: number;
  /** Largest miss over what was allowed. */
  worst: number;
}
export interface ProofRecord {
  blanks: number;
  weights: number;
  counted: number;
  agreed: number;
  setAside: number;
  /** Largest first. */
  wrong: WrongProof[];
  /** Chance of so few agreeing with a true ±; 1 with none counted. */
  chance: number;
  /** By what the ± would have to grow for 19 of 20 to agree; 1 where they do. */
  widen: number;
}

export function proofRecord(builds: readonly BuildProofs[]): ProofRecord {
  const judged = builds.flatMap(({ id, title, proofs }) =>
    proofs
      .filter(({ setAside }) => !setAside)
      .map(({ hungKg, madeAt, predicted, seen }) => ({
        build: id,
        title,
        hungKg,
        madeAt,
        ...judgeProof(predicted, seen),
      }))
      .filter(({ counted }) => counted > 0),
  );
  const ratios = judged.flatMap((proof) => proof.ratios).sort((a, b) => a - b);
  const agreed = judged.reduce((sum, proof) => sum + proof.agreed, 0);
  return {
    blanks: new Set(judged.map(({ build }) => build)).size,
    weights: judged.length,
    counted: ratios.length,
    agreed,
    setAside: builds.reduce((sum, { proofs }) => sum + proofs.filter((one) => one.setAside).length, 0),
    wrong: judged
      .filter((proof) => proof.agreed < proof.counted)
      .sort((a, b) => b.worst - a.worst)
      .map(({ build, title, hungKg, madeAt, agreed: held, counted, worst }) => ({
        build,
        title,
        hungKg,
        madeAt,
        agreed: held,
        counted,
        worst,
      })),
    chance: chanceOfSoFew(agreed, ratios.length),
    widen: ratios.length === 0 ? 1 : Math.max(1, ratios[Math.ceil(0.95 * ratios.length) - 1]),
  };
}

/** Σ of the binomial law from 0 to `agreed` of `counted` at 0.95. */
function chanceOfSoFew(agreed: number, counted: number): number {
  let term = 0.05 ** counted;
  let sum = 0;
  for (let k = 0; k <= agreed; k++) {
    sum += term;
    term *= ((counted - k) / (k + 1)) * (0.95 / 0.05);
  }
  return counted === 0 ? 1 : Math.min(1, sum);
}
