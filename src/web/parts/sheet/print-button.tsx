import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Sheet } from '../../../sheets/drawing.ts';
import { type Paper, useShop } from '../../read/shop.tsx';
import { type PrintJob, usePrint } from './use-print.ts';

interface PrintButtonProps {
  /** `strips`, `marks`: the file's name and the row in the record. */
  sheet: string;
  /** Where it is not the shop's sheets. */
  paper?: PrintJob['paper'];
  /** On the shop's paper, with the stamp that names build, revision and date. */
  draw(on: { paper: Paper; stamp: string }): Sheet[];
  className?: string;
  isDisabled?: boolean;
  children: ReactNode;
}

/** Prints one sheet of the build to a PDF. */
export function PrintButton(props: PrintButtonProps) {
  const { sheet, paper: own, draw, className = 'button', isDisabled = false, children } = props;
  const { paper } = useShop();
  const { print, printing } = usePrint();
  return (
    <Button
      className={className}
      isDisabled={printing || isDisabled}
      onPress={() => print({ sheet, paper: own ?? paper, draw: (stamp) => draw({ paper, stamp }) })}
    >
      {children}
    </Button>
  );
}
