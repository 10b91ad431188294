import type { ReactNode } from 'react';
import { Link } from 'wouter';

export interface PageProps {
  title: string;
  /** The quiet line under the title. */
  aside?: ReactNode;
  /** Beside the title: the rail, or a way back. */
  beside?: ReactNode;
  /** The block at the foot of the sheet. */
  foot?: ReactNode;
  children: ReactNode;
}

/** One sheet: title, what belongs beside it, the drawing, the block at its foot. */
export function Page({ title, aside, beside, foot, children }: PageProps) {
  return (
    <div className="sheet">
      <title>{`${title} · Fairbend`}</title>
      <a className="skip-link" href="#content">
        Skip to the sheet
      </a>
      <header className="sheet-head">
        <div className="sheet-title">
          <h1>{title}</h1>
          {aside && <p className="aside">{aside}</p>}
        </div>
        {beside}
      </header>
      <main id="content" tabIndex={-1}>
        {children}
      </main>
      <footer className="sheet-foot">{foot ?? <PlainFoot />}</footer>
    </div>
  );
}

function PlainFoot() {
  return (
    <nav className="plain-foot screen-only" aria-label="Fairbend">
      <Link href="/">Shelf</Link>
      <Link href="/settings">Settings</Link>
    </nav>
  );
}
