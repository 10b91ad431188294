import type { ReactNode } from 'react';

/** A short caution at the step where the work can hurt, with where it comes from. */
export function Caution({ source, children }: { source: string; children: ReactNode }) {
  return (
    <aside className="caution" aria-label="Caution">
      <p>{children}</p>
      <p className="caution-source">{source}</p>
    </aside>
  );
}
