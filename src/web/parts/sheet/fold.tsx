import { type ReactNode, useState } from 'react';
import { useOpenParts } from '../../read/open-parts.ts';

interface FoldProps {
  title: ReactNode;
  /** In few words what is inside, so that it need not be opened. */
  aside?: ReactNode;
  children: ReactNode;
  className?: string;
  /** Where the title alone would not tell it from its like. */
  label?: string;
  anchor?: string;
  startOpen?: boolean;
  /** Beginnings of the paths of the fields inside, so that "Go there" can open it: `layout/-/limit`. */
  holds?: readonly string[];
}

/** Kept shut until asked for. What it holds comes into the page when it is opened. */
export function Fold(props: FoldProps) {
  const { title, aside, children, className, label, anchor, startOpen = false, holds } = props;
  const { open: all } = useOpenParts();
  const [open, setOpen] = useState(startOpen);
  if (all) {
    return (
      <section id={anchor} className={className} aria-label={label}>
        {title}
        <div className="fold-inside">{children}</div>
      </section>
    );
  }
  return (
    <details
      id={anchor}
      className={className ? `fold ${className}` : 'fold'}
      aria-label={label}
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
