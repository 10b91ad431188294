import type { ReactNode } from 'react';

/** The one plain line at the top of a step: what to do next. */
export function NextLine({ children }: { children: ReactNode }) {
  return (
    <p className="next-line" role="note">
      <span className="next-word">Next</span> <span>{children}</span>
    </p>
  );
}
