import type { ReactNode } from 'react';
import { Link } from 'wouter';

interface PageProps {
  title: string;
  /** The step at hand: the window is named by it first. */
  step?: string;
  /** The sheet stands alone, with nothing but a way back to this address. */
  bare?: string;
  /** The quiet line under the title. */
  aside?: ReactNode;
  /** Beside the title: the rail, or a way back. */
  beside?: ReactNode;
  /** The block at the foot of the sheet. */
  foot?: ReactNode;
  children: ReactNode;
}

/** One sheet: title, what belongs beside it, the drawing, the block at its foot. */
export function Page({ title, step, bare, aside, beside, foot, children }: PageProps) {
  const name = step ? `${step} · ${title}` : title;
  if (bare) return <BareSheet {...{ name, title, bare, children }} />;
  return (
    <div className="sheet">
      <title>{`${name} · Fairbend`}</title>
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

interface BareProps extends Pick<PageProps, 'title' | 'children'> {
  name: string;
  bare: string;
}

function BareSheet({ name, title, bare, children }: BareProps) {
  return (
    <div className="sheet sheet-bare">
      <title>{`${name} · Fairbend`}</title>
      <header className="bare-head">
        <h1>{title}</h1>
        <Link className="button" href={bare}>
          Close
        </Link>
      </header>
      <main id="content" tabIndex={-1}>
        {children}
      </main>
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
