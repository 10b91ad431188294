import { Button } from 'react-aria-components';
import type { Choices } from '../../../engine/flow/choices.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';

export interface StartPartProps {
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
      <ChoiceField
        label="Start from"
        path={['layout', '-', 'startKind']}
        unset="rule"
        options={[
          { value: 'rule', name: 'arithmetic rule' },
          { value: 'chart', name: 'chart' },
          { value: 'own', name: 'own list' },
        ]}
      />
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
          <NumberField
            label="Guides, the tip-top not counted"
            path={['layout', '-', 'startCount']}
            placeholder={`${guides.length}, usual`}
          />
        )}
        <QuantityField
          label="First guide from the tip"
          path={['layout', '-', 'startFirst']}
          gesture="first guide of the rule"
          placeholder={`${show(start.firstFromTipM)}, usual`}
        />
        <QuantityField
          label="Stripping guide from the tip"
          path={['layout', '-', 'startStripping']}
          gesture="stripping guide of the rule"
          placeholder={`${show(start.strippingFromTipM)}, usual`}
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
      <TextField
        label={kind === 'chart' ? 'The chart’s marks, typed or pasted' : 'Your marks, typed or pasted'}
        path={['layout', '-', 'startText']}
        gesture={kind === 'chart' ? 'chart' : 'own list'}
        lines={5}
        placeholder="4 1/2, 9 3/4, 15 5/8 …"
      />
      {findings.map((message) => (
        <p key={message} className="field-trouble small">
          <span aria-hidden="true">▲ </span>
          {message}
        </p>
      ))}
      <div className="fields-row">
        <ChoiceField
          label="Bare numbers are"
          path={['layout', '-', 'startUnit']}
          unset={system}
          options={[
            { value: 'inch', name: 'inches' },
            { value: 'mm', name: 'mm' },
          ]}
        />
        <ChoiceField
          label="Counted from"
          path={['layout', '-', 'startFrom']}
          unset="tip"
          options={[
            { value: 'tip', name: 'the tip' },
            { value: 'butt', name: 'the butt end' },
          ]}
        />
      </div>
    </>
  );
}
