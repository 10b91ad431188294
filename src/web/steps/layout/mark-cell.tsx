import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Field } from '../../fields/field.tsx';

interface MarkCellProps {
  guide: number;
  /** Row of the record; undefined while the guide only stands for common practice. */
  row: string | undefined;
  /** Makes it a row, so that its mark can be typed. */
  onTakeUp(): void;
}

/** A mark in the table: seen as a figure that answers while dragging, pressed to type it. */
export function MarkCell({ guide, row, onTakeUp }: MarkCellProps) {
  const [typing, setTyping] = useState(false);
  const cell = useRef<HTMLFieldSetElement>(null);
  const isField = typing && row !== undefined;
  useEffect(() => {
    if (isField) cell.current?.querySelector('input')?.select();
  }, [isField]);
  if (isField) {
    return (
      <fieldset
        ref={cell}
        className="mark-field"
        onBlur={(event) => {
          const trouble = event.currentTarget.querySelector('[aria-invalid="true"]');
          if (!trouble && !event.currentTarget.contains(event.relatedTarget)) setTyping(false);
        }}
      >
        <legend className="visually-hidden">Mark of guide {guide + 1}</legend>
        <Field label={`Guide ${guide + 1} from the tip`} labelHidden path={['guides', row, 'station']} />
      </fieldset>
    );
  }
  return (
    <Button
      className="mark-button"
      onPress={() => {
        if (row === undefined) onTakeUp();
        setTyping(true);
      }}
    >
      <span className="visually-hidden">Type the mark of guide {guide + 1}: </span>
      <span data-mark="" className="figures" />
    </Button>
  );
}
