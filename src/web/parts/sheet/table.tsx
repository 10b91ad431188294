import type { ComponentProps, ReactNode, Ref } from 'react';

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

/** What stands over a column; `spoken` is read aloud alone, over buttons that say themselves what they do. */
type Head = string | number | { spoken: string };

interface TableProps extends Omit<ComponentProps<'table'>, 'frame'> {
  label: string;
  heads: readonly Head[];
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
  const { label, heads, caption, spoken, frame, at, body, note, className = '', children, ...table } = props;
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
        <tbody ref={body}>{children}</tbody>
      </table>
      {note}
    </TableFrame>
  );
}
