import { criteria } from '../../../engine/layout/criteria.ts';
import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { limitFields } from '../../../record/schema/limit-fields.ts';
import { criterionWords } from '../../../words/criteria.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useShop } from '../../read/shop.tsx';

/** What the layout is judged by, and what each limit does. */
export function LimitsPart({ usual }: { usual: LayoutLimits }) {
  const { system } = useShop();
  const show = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 0 });
  return (
    <Part
      folded
      holds={['layout/-/limit', 'layout/-/ferruleClear', 'layout/-/intervals', 'layout/-/knot']}
      title="Limits"
      aside="calibrated to common practice, not derived"
    >
      <div className="fields-row" data-group="">
        {criteria.map(({ id, quantity }) => {
          const { label, name, hint, unit, limit } = criterionWords[id];
          const field = {
            label,
            path: ['layout', '-', limitFields[id].field] as const,
            gesture: `limit of the ${name}`,
            placeholder: `${limit(usual[quantity], system)}, usual`,
            hint,
          };
          return unit ? (
            <NumberField key={id} {...field} unit={unit} />
          ) : (
            <QuantityField key={id} {...field} />
          );
        })}
      </div>
      <p className="quiet small">
        Extra bend is what the line adds where it stands off the soft tip. Twice the usual limit makes
        intervals nearly even, half of it crowds the tip.
      </p>
      <div className="fields-row">
        <ChoiceField
          label="Intervals"
          path={['layout', '-', 'intervals']}
          unset="growing"
          options={[
            { value: 'growing', name: 'growing towards the butt' },
            { value: 'free', name: 'free' },
          ]}
        />
        <QuantityField
          label="Kept free beside a ferrule"
          path={['layout', '-', 'ferruleClear']}
          gesture="kept free beside ferrules"
          placeholder={`${show(0.01)}; ${show(0.025)} beside a spigot`}
          hint="6 to 15 mm clear of a ferrule’s wrap; 25 mm and more beside a spigot (common practice, no source)."
        />
      </div>
      <KeepHabit collection="layout" words="the layout" />
    </Part>
  );
}
