import type { JudgedTipRepairs } from '../../../engine/flow/judged-tip-repair.ts';
import { tipRepairInWords } from '../../../words/tip-repair.ts';
import { useShop } from '../../read/shop.tsx';
import { GuideFates } from './guide-fates.tsx';

/** Leaving the guides beside moving them, read on the blank on record; the other way folded. */
export function JudgedFates({ judged, loadsKg }: { judged: JudgedTipRepairs; loadsKg: readonly number[] }) {
  const { writer } = useShop();
  const { deed, why } = tipRepairInWords(judged, loadsKg, writer);
  const { leave, move, proposed } = judged;
  const moves = proposed === 'move' && move;
  const other = moves ? leave : move;
  return (
    <>
      <p>
        <strong>{deed}</strong> {why.join(' ')}
      </p>
      <GuideFates repair={(moves || leave).repair} />
      {other && (
        <details>
          <summary>{moves ? 'Leave them as they are' : 'Move them all the same'}</summary>
          <GuideFates repair={other.repair} label="Guides, the other way" />
        </details>
      )}
    </>
  );
}
