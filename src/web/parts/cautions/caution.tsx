import type { ReactNode } from 'react';

/** A short caution at the step where the work can hurt, with where it comes from. */
export function Caution({ source, children }: { source: string; children: ReactNode }) {
  return (
    <div className="caution" role="note">
      <p>
        <strong>Caution. </strong>
        {children}
      </p>
      <p className="caution-source">{source}</p>
    </div>
  );
}
