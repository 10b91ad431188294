import { commonHeldM } from '../../../engine/bench/protocol.ts';
import { readWalls } from '../../../record/read-walls.ts';
import { newStandChanges } from '../../parts/stand/stand-changes.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { onTape } from './plan-rows.ts';

/** Lays out three pictures of this blank, held as far from its tip as a protocol would hold it. */
export function useBeginStand(): () => void {
  const { write, newRowId, rows } = useBuild();
  const { blank } = useBench();
  const { system, document: shop, writer } = useShop();
  return () => {
    if (!blank) return;
    const standOffM = readWalls(shop).at(-1)?.standOffM;
    write(
      'makeStand',
      newStandChanges({
        order: rows('stands').length,
        madeAt: new Date().toISOString(),
        heldFromTip: onTape(blank.lengthM - commonHeldM, system),
        standOff: standOffM === undefined ? null : { si: standOffM, text: writer.fine(standOffM) },
        newRowId,
      }),
    );
  };
}
