import { commonFerruleClearM } from '../../../engine/bench/ferrule-zones.ts';
import { criteriaIn } from '../../../engine/layout/criteria.ts';
import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { limitFields } from '../../../record/fields/limit-fields.ts';
import { Field } from '../../fields/field.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { Part } from '../../parts/sheet/part.tsx';

/** What the layout is judged by, and what each limit does. */
export function LimitsPart({ usual }: { usual: LayoutLimits }) {
  return (
    <Part
      folded
      holds={[
        'layout/-/limit',
        'line/-/limitFirst',
        'layout/-/ferruleClear',
        'layout/-/intervals',
        'layout/-/knot',
      ]}
      title="Limits"
      aside="calibrated to common practice, not derived"
    >
      <div className="fields-row" data-group="">
        {criteriaIn(usual).map(({ id, quantity }) => (
          <Field key={id} path={['layout', '-', limitFields[id].field]} usual={usual[quantity]} />
        ))}
        <Field path={['line', '-', 'limitFirst']} usual={usual.firstLineAngleRad} />
      </div>
      <p className="quiet small">
        The line bends the soft tip further where it stands off it. Twice the usual limit makes intervals
        nearly even, half of it crowds the tip.
      </p>
      <div className="fields-row">
        <Field path={['layout', '-', 'intervals']} />
        <Field path={['layout', '-', 'ferruleClear']} usual={commonFerruleClearM.other} />
      </div>
      <KeepHabit collection="layout" />
    </Part>
  );
}
