import { commonHandle } from '../../engine/bench/default-guides.ts';
import { formatLength } from '../../engine/units/format-quantity.ts';
import { BuildFields } from '../fields/build-fields.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { siOf } from '../read/values.ts';
import { Caution } from '../shell/caution.tsx';
import { NextLine } from '../shell/next-line.tsx';
import { Part } from '../shell/part.tsx';
import { HandleDrawing } from './handle-drawing.tsx';
import './handle.css';

/** Where the bend begins and where the line leaves the reel; what is left empty is assumed, and said so. */
export function HandleStep() {
  const { single, rows } = useBuild();
  const { system } = useShop();
  const handle = single('handle');
  const blankLengthM = rows('sections').reduce((sum, row) => sum + (siOf(row, 'length') ?? 0), 0) || 2.74;
  const usual = commonHandle(blankLengthM);
  const show = (lengthM: number) => formatLength(lengthM, { system, decimals: 0, denominator: 8 });
  const gripFrontM = siOf(handle, 'gripFront') ?? usual.gripFrontFromButtM;
  const reelM = siOf(handle, 'reelFromButt') ?? usual.reelFromButtM;
  return (
    <BuildFields>
      <NextLine>
        {siOf(handle, 'gripFront') === undefined
          ? `Measure from the butt end to where the front of the grip will be; ${show(usual.gripFrontFromButtM)} is assumed meanwhile.`
          : 'The handle is set; go on to Layout.'}
      </NextLine>
      <Part title="Handle" aside="all from the butt end of the blank">
        <HandleDrawing
          gripFrontM={gripFrontM}
          reelM={reelM}
          reelOffsetM={siOf(handle, 'reelOffset') ?? usual.reelOffsetM}
          show={show}
        />
        <div className="fields-row" data-group="">
          <QuantityField
            label="Butt end to the front of the grip"
            path={['handle', '-', 'gripFront']}
            gesture="front of the grip"
            placeholder={`${show(usual.gripFrontFromButtM)} assumed`}
            hint="The bend begins here."
          />
          <QuantityField
            label="Butt end to where the line leaves the reel"
            path={['handle', '-', 'reelFromButt']}
            gesture="place of the reel"
            placeholder={`${show(usual.reelFromButtM)} assumed`}
          />
          <QuantityField
            label="Line at the reel, off the blank’s axis"
            path={['handle', '-', 'reelOffset']}
            gesture="reel off the axis"
            placeholder={`${show(usual.reelOffsetM)} assumed`}
          />
          <QuantityField
            label="Mass of the reel with line"
            path={['handle', '-', 'reelMass']}
            gesture="mass of the reel"
          />
        </div>
        <p className="quiet">
          Usual handles of one-handed fly rods are 7 to 8 in (180–205 mm) of grip and seat, 10 in (255 mm) to
          the front of the grip; two-handed ones about 22 in (common practice, no source).
        </p>
      </Part>
      <Caution source="common practice, no source">
        A glued seat and grip cannot be turned or moved. Dry-fit them, sight along the line side of every
        section, and only then mix the glue.
      </Caution>
    </BuildFields>
  );
}
