import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useShop } from '../../read/shop.tsx';

/** What the layout is judged by, and what each limit does. */
export function LimitsPart({ usual }: { usual: LayoutLimits }) {
  const { writer } = useShop();
  return (
    <Part title="Limits" aside="calibrated to common practice, not derived">
      <div className="fields-row" data-group="">
        <QuantityField
          label="Line angle in a ring"
          path={['layout', '-', 'limitLineAngle']}
          gesture="limit of the line angle"
          placeholder={`${writer.lineAngle(usual.lineAngleRad)}, usual`}
          hint="Where the line turns sharply it drags and wears the ring. Lower: guides closer where the bend is tight. Builders aim at 10 to 15° (common practice, no source)."
        />
        <QuantityField
          label="Gap above the ring"
          path={['layout', '-', 'limitGap']}
          gesture="limit of the gap"
          placeholder={`${writer.length(usual.gapM)}, usual`}
          hint="How far the line may leave the bend between two rings. A rule reads the ring height on top."
        />
        <NumberField
          label="Bend added by the line"
          path={['layout', '-', 'limitExtraBendPerM']}
          unit="1/m"
          placeholder={`${usual.extraBendPerM.toFixed(3)}, usual`}
        />
      </div>
      <p className="quiet small">
        The line adds bend where it stands off the soft tip. Twice the usual limit makes intervals nearly
        even; half of it crowds the tip.
      </p>
      <div className="fields-row">
        <ChoiceField
          label="Intervals"
          path={['layout', '-', 'intervals']}
          unset="growing"
          options={[
            { value: 'growing', name: 'growing toward the butt' },
            { value: 'free', name: 'free' },
          ]}
        />
        <QuantityField
          label="Kept free beside a ferrule"
          path={['layout', '-', 'ferruleClear']}
          gesture="kept free beside ferrules"
          placeholder={`${writer.length(0.01)}; ${writer.length(0.025)} beside a spigot`}
          hint={`${writer.length(0.006)} to ${writer.length(0.015)} clear of a ferrule’s wrap; ${writer.length(0.025)} and more beside a spigot (common practice, no source).`}
        />
      </div>
      <KeepHabit collection="layout" words="the layout" />
    </Part>
  );
}
