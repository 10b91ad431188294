import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { LoadSwitch } from '../../parts/drawing/load-switch.tsx';
import type { TracedTest } from './use-photographed.ts';

/** Which photographed test is looked at, where there are several. */
export function TestChoice(props: {
  tests: readonly TracedTest[];
  shown: TracedTest;
  onPick: (id: string) => void;
}) {
  const { tests, shown, onPick } = props;
  const name = ({ test, number }: TracedTest) =>
    `Test ${number}, ${formatGrams(test.hungKg ?? 0, 0)}, ${test.madeAt.slice(0, 10)}`;
  if (tests.length === 1) return <p className="small quiet">{name(shown)}</p>;
  return (
    <LoadSwitch
      label="Photographed test"
      names={tests.map(name)}
      drawn={tests.indexOf(shown)}
      onChange={(at) => onPick(tests[at].test.id)}
    />
  );
}
