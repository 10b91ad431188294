import { type ReactNode, useId, useState } from 'react';

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
  /** Kept shut until asked for. What it holds comes into the page when it is opened. */
  folded?: boolean;
  /** Beginnings of the paths of the fields inside, so that "Go there" can open it: `layout/-/limit`. */
  holds?: readonly string[];
}

/** A part of a sheet under its own heading. */
export function Part({ folded, ...part }: PartProps) {
  return folded ? <FoldedPart {...part} /> : <OpenPart {...part} />;
}

function OpenPart({ title, aside, tools, children, className, anchor }: PartProps) {
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

function FoldedPart({ title, aside, tools, children, className, anchor, holds }: PartProps) {
  const [open, setOpen] = useState(false);
  return (
    <details
      id={anchor}
      className={className ? `part fold ${className}` : 'part fold'}
      data-holds={holds?.join(' ')}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h2>{title}</h2>
        {aside && <span className="aside">{aside}</span>}
      </summary>
      {open && (
        <div className="fold-inside">
          {tools && <div className="part-tools screen-only">{tools}</div>}
          {children}
        </div>
      )}
    </details>
  );
}
