import { type ReactNode, useId } from 'react';
import { useOpenParts } from '../../read/open-parts.ts';
import { Fold } from './fold.tsx';

interface PartProps {
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
  startOpen?: boolean;
  holds?: readonly string[];
}

/** A part of a sheet under its own heading. */
export function Part({ folded, ...part }: PartProps) {
  const { open: all } = useOpenParts();
  return folded && !all ? <FoldedPart {...part} /> : <OpenPart {...part} />;
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

function FoldedPart({ title, tools, children, className, ...fold }: PartProps) {
  return (
    <Fold {...fold} title={<h2>{title}</h2>} className={className ? `part ${className}` : 'part'}>
      {tools && <div className="part-tools screen-only">{tools}</div>}
      {children}
    </Fold>
  );
}
