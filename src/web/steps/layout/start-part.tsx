import { Button } from 'react-aria-components';
import type { Choices } from '../../../engine/flow/choices.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';

interface StartPartProps {
  choices: Choices;
  blankLengthM: number;
  /** What is odd about the list. */
  findings: readonly string[];
  /** Puts the start's marks in as ours; undefined where it makes none, or ours are its own already. */
  onTake: (() => void) | undefined;
}

/** Where the layout starts from: the arithmetic rule, a chart, or the builder's own list. */
export function StartPart({ choices, blankLengthM, findings, onTake }: StartPartProps) {
  const layout = useBuild().single('layout');
  const kind = textOf(layout, 'startKind') ?? 'rule';
  return (
    <Part
      folded
      holds={['layout/-/start']}
      title="Start"
      aside="what this blank is compared with"
      tools={
        onTake && (
          <Button className="plain" onPress={onTake}>
            Use the start’s marks
          </Button>
        )
      }
    >
      <Field path={['layout', '-', 'startKind']} />
      {kind === 'rule' ? (
        <RuleFields choices={choices} blankLengthM={blankLengthM} />
      ) : (
        <ListFields kind={kind} findings={findings} />
      )}
    </Part>
  );
}

function RuleFields({ choices, blankLengthM }: Pick<StartPartProps, 'choices' | 'blankLengthM'>) {
  const { system } = useShop();
  const { start, guides } = choices;
  const show = (lengthM: number) => formatLength(lengthM, { system, denominator: 8, decimals: 0 });
  if (start.kind !== 'rule') return null;
  return (
    <>
      <div className="fields-row" data-group="">
        {guides.every(({ id }) => id === undefined) && (
          <Field path={['layout', '-', 'startCount']} usual={guides.length} />
        )}
        <Field path={['layout', '-', 'startFirst']} usual={start.firstFromTipM} />
        <Field
          path={['layout', '-', 'startStripping']}
          usual={start.strippingFromTipM}
          hint={`${show(blankLengthM - start.strippingFromTipM)} from the butt end`}
        />
      </div>
      <p className="quiet small">
        Each interval is longer than the one before by the same step (common practice, no source).
      </p>
    </>
  );
}

function ListFields({ kind, findings }: { kind: string; findings: readonly string[] }) {
  const { system } = useShop();
  return (
    <>
      <Field
        label={kind === 'chart' ? 'The chart’s marks, typed or pasted' : 'Your marks, typed or pasted'}
        path={['layout', '-', 'startText']}
      />
      {findings.map((message) => (
        <p key={message} className="field-trouble small">
          <span aria-hidden="true">▲ </span>
          {message}
        </p>
      ))}
      <div className="fields-row">
        <Field path={['layout', '-', 'startUnit']} usual={system} />
        <Field path={['layout', '-', 'startFrom']} />
      </div>
    </>
  );
}
