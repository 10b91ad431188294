import { takeFromRack, takeKeeper } from '../../../record/rack.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import { RackPick } from './rack-pick.tsx';

/** Tip-top and hook keeper from the shop's guides; nothing where the shop has none of them. */
export function EndFittings() {
  const { rows, write, newRowId } = useBuild();
  const { rack } = useShop();
  const of = (kind: string) => rack.filter((row) => textOf(row, 'kind') === kind);
  const [tipTops, keepers] = [of('tip-top'), of('keeper')];
  const tipTop = rows('guides').find((row) => textOf(row, 'kind') === 'tip-top');
  if (tipTops.length + keepers.length === 0) return null;
  return (
    <div className="fields-row">
      {tipTops.length > 0 && (
        <div className="field">
          <span className="field-label">Tip-top</span>
          <RackPick
            label="Shop’s tip-top"
            rack={tipTops}
            chosen={tipTop && textOf(tipTop, 'fromRack')}
            onChoose={(picked) => write('chooseTipTop', takeFromRack(picked, tipTop?.id ?? newRowId()))}
          />
        </div>
      )}
      {keepers.length > 0 && (
        <div className="field">
          <span className="field-label">Hook keeper; its place is on the handle’s sheet</span>
          <RackPick
            label="Shop’s keeper"
            rack={keepers}
            chosen={undefined}
            onChoose={(picked) => write('chooseKeeper', takeKeeper(picked))}
          />
        </div>
      )}
    </div>
  );
}
