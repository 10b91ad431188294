import { judgeProof } from '../../../engine/load-test/judge-proof.ts';
import type { Proof } from '../../../record/read-proofs.ts';

export interface NextOnLoadTest {
  words: string;
  /** Path key of the field to go to. */
  at?: string;
  /** The step to go on to. */
  goOn?: 'blank' | 'blank/spine' | 'wraps';
}

/** What to do next about the newest proof that counts; `load` writes a weight. */
export function nextOnLoadTest(
  proofs: readonly Proof[],
  { isAccepted, isSided }: { isAccepted: boolean; isSided: boolean },
  load: (massKg: number) => string,
): NextOnLoadTest {
  const proof = proofs.findLast(({ setAside }) => setAside === undefined);
  if (isAccepted) return { words: 'The test is accepted. Go on to the wraps.', goOn: 'wraps' };
  if (!proof && !isSided) {
    return {
      words:
        'Choose the line side of each section: the guides are taped along it. Any rule of yours will do.',
      goOn: 'blank/spine',
    };
  }
  if (!proof) {
    return {
      words: 'Tape the guides on. Predict a weight you have not hung yet, then hang it and compare.',
      at: 'proofs',
    };
  }
  const hung = load(proof.hungKg);
  const { counted, agreed, places } = judgeProof(proof.predicted, proof.seen);
  if (counted === 0) {
    const open = Math.max(
      0,
      places.findIndex(({ verdict }) => verdict === 'not-seen'),
    );
    const at = `proofPlaces/${proof.rowIds[open]}/seenOut`;
    return { words: `Hang ${hung} and enter where the tip hangs.`, at };
  }
  return agreed === counted
    ? {
        words: `With ${hung} the rod hangs as predicted. Cast it on the lawn while the guides are taped; then wrap.`,
        goOn: 'wraps',
      }
    : {
        words: `With ${hung} the rod hangs elsewhere than predicted. Check the butt’s angle; if it was right, enter this weight under Blank.`,
        goOn: 'blank',
      };
}
