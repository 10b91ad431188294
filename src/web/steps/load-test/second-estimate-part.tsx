import { useMemo, useState } from 'react';
import type { FitSolved } from '../../../engine/stiffness/request.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import type { SecondAnswer } from '../../worker/doubt-messages.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { SecondEstimateChart } from './second-estimate-chart.tsx';
import { TestChoice } from './test-choice.tsx';
import { type BareCurve, useBareCurves, useTracedTests } from './use-photographed.ts';

/** Stiffness from moment over curvature of a photographed bare blank, beside the fit. */
export function SecondEstimatePart() {
  const curves = useBareCurves();
  const { stiffness } = useBench();
  const tests = useTracedTests().filter(({ test }) => curves.has(test.id));
  const [picked, setPicked] = useState<string>();
  const shown = tests.find(({ test }) => test.id === picked) ?? tests[0];
  const bare = shown && curves.get(shown.test.id);
  if (!shown || !bare || !stiffness.solved) return null;
  return (
    <Part folded title="A second stiffness" aside="moment over curvature, straight from the traced curve">
      <TestChoice tests={tests} shown={shown} onPick={setPicked} />
      <Beside bare={bare} fitted={stiffness.solved} />
    </Part>
  );
}

function Beside({ bare, fitted }: { bare: BareCurve; fitted: FitSolved }) {
  const task = useMemo(() => ({ does: 'second' as const, ...bare, fitted }), [bare, fitted]);
  const { answer, failure } = useLongTask(task, doubtLane);
  const { blank } = useBench();
  if (failure) return <p role="alert">The curve gives no stiffness by itself: {failure}.</p>;
  if (!answer || !blank) return <p className="quiet">Working it out …</p>;
  if (answer.windows.length === 0) {
    return (
      <p>
        This blank bends too little in the picture to tell its stiffness by itself: hang more, with the
        caution of the load test in mind.
      </p>
    );
  }
  return (
    <>
      <Disagreements answer={answer} />
      <SecondEstimateChart stiffness={fitted.stiffness} windows={answer.windows} lengthM={blank.lengthM} />
      <SecondTable answer={answer} />
    </>
  );
}

function Disagreements({ answer }: { answer: SecondAnswer }) {
  const length = useLength();
  const beside = answer.besideItself
    ? 'the fit, which has seen this photograph too'
    : 'what was measured otherwise';
  if (answer.disagreements.length === 0) {
    return <p role="status">It agrees with {beside} wherever the blank bends enough to tell.</p>;
  }
  return answer.disagreements.map(({ fromTipM, toTipM, share, sigmas }) => (
    <p key={fromTipM} className="attention" role="status">
      <Figure
        text={`Between ${length(fromTipM)} and ${length(toTipM)} from the tip the photograph wants a stiffness ${Math.abs(Math.round(100 * share))} % ${share < 0 ? 'lower' : 'higher'} than ${beside}`}
      />
      , {Math.abs(sigmas).toFixed(1)} times what chance allows in one of three: look at the overlay there, and
      read that stretch again.
    </p>
  ));
}

function SecondTable({ answer }: { answer: SecondAnswer }) {
  const length = useLength();
  const figure = (value: number) => Number(value.toPrecision(3)).toString();
  return (
    <details className="figures-twin">
      <summary>The second stiffness in figures</summary>
      <Table
        label="Second stiffness in figures"
        spoken="Stiffness from moment over curvature"
        heads={['From tip', 'EI in N·m²', '95 %', 'fit, averaged alike', 'apart, standard deviations']}
        rows={answer.windows.map((row) => [
          `${length(row.fromTipM)} to ${length(row.toTipM)}`,
          figure(row.EINm2),
          `${figure(row.lowNm2)} to ${figure(row.highNm2)}`,
          row.fitNm2 === undefined ? '–' : figure(row.fitNm2),
          row.sigmas === undefined ? '–' : row.sigmas.toFixed(1).replace('-', '−'),
        ])}
      />
    </details>
  );
}

function useLength(): (m: number) => string {
  const { system } = useShop();
  return (m) => formatLength(m, { system, denominator: 8, decimals: 0 });
}
