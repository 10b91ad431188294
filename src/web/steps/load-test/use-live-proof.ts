import { useState } from 'react';
import { nextProofKg } from '../../../engine/flow/next-proof.ts';
import type { OrientedCurve } from '../../../engine/load-test/curve-beside.ts';
import { hungBefore } from '../../../engine/load-test/judge-proof.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { readProofs } from '../../../record/read-proofs.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useFittingBlanks } from '../../read/use-fitting-blanks.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { type LiveProof, makeLiveProof, seenInProof } from './live-proof.ts';

export interface LiveProofState {
  made: LiveProof | undefined;
  /** The weight that one press predicts. */
  nextKg: number | undefined;
  trouble: string | undefined;
  predict(): void;
  /** Writes what the picture shows beside what was predicted. */
  keepSeen(): void;
  end(): void;
}

/** The next weight's bend, predicted and recorded before it hangs. */
export function useLiveProof(of: {
  model: SheetModel;
  test: LoadTest;
  curve: OrientedCurve | undefined;
}): LiveProofState {
  const { model, test, curve } = of;
  const { document, write, newRowId } = useBuild();
  const { bench, stiffness } = useBench();
  const { blanks, working } = useFittingBlanks();
  const { writer } = useShop();
  const sentence = useSentence();
  const [made, setMade] = useState<LiveProof>();
  const [trouble, setTrouble] = useState<string>();
  const proofs = readProofs(document);
  const hungKg = (bench?.setups ?? []).flatMap((setup) => setup.tests.map((one) => one.hungKg));
  const tried = [...hungKg, ...proofs.map((proof) => proof.hungKg), ...(test.hungKg ? [test.hungKg] : [])];
  const nextKg = nextProofKg(tried, model.loads.kg);

  const predict = () => {
    if (!curve || nextKg === undefined || working) return;
    if (hungBefore(nextKg, hungKg) !== undefined) {
      return setTrouble(`${writer.load(nextKg)} was hung on the bench already and would prove nothing.`);
    }
    const asked = {
      model,
      stiffness,
      blanksThatFit: blanks,
      hungKg: nextKg,
      buttAngleRad: curve.buttAngleRad,
      guidesOn: test.rod === 'taped',
    };
    const order = proofs.length;
    const answer = makeLiveProof(asked, { order, newRowId, madeAt: new Date().toISOString() });
    if (answer.status !== 'predicted') return setTrouble(sentence(answer.reason));
    const [finding] = write('makeProof', answer.changes);
    setTrouble(finding?.message);
    if (!finding) setMade(answer.proof);
  };
  return {
    made,
    nextKg,
    trouble,
    predict,
    keepSeen: () => made && curve && write('keepLive', seenInProof(curve, made)),
    end: () => setMade(undefined),
  };
}
