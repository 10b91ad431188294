import { type ReactNode, useState } from 'react';

export interface FoldProps {
  title: ReactNode;
  /** In few words what is inside, so that it need not be opened. */
  aside?: ReactNode;
  children: ReactNode;
  className?: string;
  anchor?: string;
  startOpen?: boolean;
  /** Beginnings of the paths of the fields inside, so that "Go there" can open it: `layout/-/limit`. */
  holds?: readonly string[];
}

/** Kept shut until asked for. What it holds comes into the page when it is opened. */
export function Fold({ title, aside, children, className, anchor, startOpen = false, holds }: FoldProps) {
  const [open, setOpen] = useState(startOpen);
  return (
    <details
      id={anchor}
      className={className ? `fold ${className}` : 'fold'}
      data-holds={holds?.join(' ')}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {title}
        {aside && <span className="aside">{aside}</span>}
      </summary>
      {open && <div className="fold-inside">{children}</div>}
    </details>
  );
}
