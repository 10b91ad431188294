import type { ReactNode } from 'react';

/** A table that may be wider than the screen: it scrolls by itself, by keyboard too. */
export function TableFrame({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="table-frame" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
