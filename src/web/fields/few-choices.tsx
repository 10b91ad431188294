import type { ReactNode } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';

export interface Option {
  value: string;
  name: string;
}

interface FewChoicesProps<Choice extends string> {
  label: string;
  labelHidden?: boolean;
  /** By name, or in an order of their own. */
  options: Readonly<Record<Choice, string>> | readonly Option[];
  value: Choice | '';
  choose(value: Choice): void;
  className?: string;
  describedBy?: string;
  children?: ReactNode;
}

/** One of a few, all to be seen. */
export function FewChoices<Choice extends string>(props: FewChoicesProps<Choice>) {
  const { label, labelHidden, value, choose, className = 'field choice', describedBy, children } = props;
  return (
    <RadioGroup
      className={className}
      aria-describedby={describedBy}
      value={value}
      onChange={(picked) => choose(picked as Choice)}
    >
      <Label className={labelHidden ? 'visually-hidden' : 'field-label'}>{label}</Label>
      <div className="choice-options">
        {optionsIn(props.options).map((option) => (
          <Radio key={option.value} value={option.value} className="choice-option">
            {option.name}
          </Radio>
        ))}
      </div>
      {children}
    </RadioGroup>
  );
}

export function optionsIn(options: Readonly<Record<string, string>> | readonly Option[]): readonly Option[] {
  return Array.isArray(options)
    ? options
    : Object.entries(options as Readonly<Record<string, string>>).map(([value, name]) => ({ value, name }));
}
