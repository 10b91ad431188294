import type { ComponentProps, ReactNode, Ref } from 'react';
import { Figure } from '../../fields/figure.tsx';

interface FrameProps {
  label: string;
  className?: string;
  /** Where “Go there” leads. */
  at?: string;
  children: ReactNode;
}

/** A table that may be wider than the screen: it scrolls in its own frame, which the keyboard can reach. */
export function TableFrame({ label, className, at, children }: FrameProps) {
  return (
    <section
      className={className ? `table-frame ${className}` : 'table-frame'}
      aria-label={label}
      data-path={at}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached without a pointer
      tabIndex={0}
    >
      {children}
    </section>
  );
}

/** A figure or a word, its fractions set as such; with `className` or as more than a text where it is an object. */
export type Cell = string | number | false | undefined | { of: ReactNode; className?: string };

/** What is over a limit, or off. */
export const marked = (over: boolean, text: string): Cell =>
  over ? { of: `▲ ${text}`, className: 'attention' } : text;

/** What stands over a column; `spoken` is read aloud alone, over buttons that say themselves what they do. */
type Head = string | number | { spoken: string };

interface TableProps extends Omit<ComponentProps<'table'>, 'frame'> {
  label: string;
  heads: readonly Head[];
  /** Of figures alone, each beginning with its name; rows of another kind are the children. */
  rows?: readonly (readonly Cell[])[];
  caption?: ReactNode;
  /** The caption for ears alone, where the sheet says it already. */
  spoken?: string;
  /** Class of the frame. */
  frame?: string;
  at?: string;
  /** Where a hand draws what changes too fast for the page. */
  body?: Ref<HTMLTableSectionElement>;
  /** Below the table. */
  note?: ReactNode;
}

/** Figures in rows under their heads, in a frame that scrolls. */
export function Table(props: TableProps) {
  const {
    label,
    heads,
    rows,
    caption,
    spoken,
    frame,
    at,
    body,
    note,
    className = '',
    children,
    ...table
  } = props;
  return (
    <TableFrame label={label} className={frame} at={at}>
      <table className={`figures-table ${className}`.trimEnd()} {...table}>
        {caption && <caption>{caption}</caption>}
        {spoken && <caption className="visually-hidden">{spoken}</caption>}
        <thead>
          <tr>
            {heads.map((head, column) => (
              <th key={column} scope="col">
                {typeof head === 'object' ? <span className="visually-hidden">{head.spoken}</span> : head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {rows?.map((cells, row) => (
            <tr key={row}>
              {cells.map((cell, column) => (
                <FigureCell key={column} cell={cell} head={heads[column]} isName={column === 0} />
              ))}
            </tr>
          ))}
          {children}
        </tbody>
      </table>
      {note}
    </TableFrame>
  );
}

/** On a narrow screen rows stand as cards, and each figure is named by its column. */
function FigureCell({ cell, head, isName }: { cell: Cell; head: Head; isName: boolean }) {
  const { of, className } = typeof cell === 'object' ? cell : { of: cell, className: undefined };
  const shown = typeof of === 'string' ? <Figure text={of} /> : of;
  if (isName) {
    return (
      <th scope="row" className={className}>
        {shown}
      </th>
    );
  }
  return (
    <td className={className} data-label={typeof head === 'object' ? undefined : head}>
      {shown}
    </td>
  );
}
