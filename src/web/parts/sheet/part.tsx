import { type ReactNode, useId } from 'react';

export interface PartProps {
  title: string;
  /** A quiet line beside the title. */
  aside?: ReactNode;
  /** Buttons that belong to the whole part. */
  tools?: ReactNode;
  children: ReactNode;
  className?: string;
  /** Where the sheet's list of parts leads to. */
  anchor?: string;
}

/** A part of a sheet under its own heading. */
export function Part({ title, aside, tools, children, className, anchor }: PartProps) {
  const id = useId();
  return (
    <section
      id={anchor}
      className={className ? `part ${className}` : 'part'}
      aria-labelledby={id}
      tabIndex={anchor === undefined ? undefined : -1}
    >
      <div className="part-head">
        <h2 id={id}>{title}</h2>
        {aside && <p className="aside">{aside}</p>}
        {tools && <div className="part-tools screen-only">{tools}</div>}
      </div>
      {children}
    </section>
  );
}
