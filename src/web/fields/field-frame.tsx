import type { ReactNode } from 'react';
import { FieldLine, type FieldLineProps } from './field-line.tsx';
import { Figure } from './figure.tsx';

interface FieldFrameProps extends Omit<FieldLineProps, 'id'> {
  id: string;
  label: string;
  labelHidden?: boolean;
  hint?: ReactNode;
  children: ReactNode;
}

/** Label, control, the line under it, and the hint: the same of every kind of field. */
export function FieldFrame({ id, label, labelHidden, hint, children, ...line }: FieldFrameProps) {
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      {children}
      <FieldLine id={`${id}-line`} {...line} />
      {hint && (
        <span id={`${id}-hint`} className="field-hint">
          {typeof hint === 'string' ? <Figure text={hint} /> : hint}
        </span>
      )}
    </div>
  );
}
