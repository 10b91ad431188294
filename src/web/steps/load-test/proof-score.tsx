import { judgeProof } from '../../../engine/load-test/judge-proof.ts';
import type { Proof } from '../../../record/read-proofs.ts';
import { agreedInWords } from '../../../words/judging.ts';

/** Predicted against seen over all proofs of this rod that the builder did not set aside. */
export function ProofScore({ proofs }: { proofs: readonly Proof[] }) {
  const verdicts = proofs
    .filter(({ setAside }) => !setAside)
    .map(({ predicted, seen }) => judgeProof(predicted, seen))
    .filter(({ counted }) => counted > 0);
  if (verdicts.length === 0) return null;
  const sum = (of: 'counted' | 'agreed') => verdicts.reduce((total, verdict) => total + verdict[of], 0);
  return (
    <p role="status">
      <strong>{agreedInWords({ agreed: sum('agreed'), counted: sum('counted') })}</strong> on this rod, over{' '}
      {verdicts.length} {verdicts.length === 1 ? 'weight' : 'weights'}.
    </p>
  );
}
