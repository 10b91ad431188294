import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';

export interface NextLineProps {
  children: ReactNode;
  /** Path key of the field where it is done. */
  at?: string;
}

/** The one plain line at the top of a step: what to do next. It stays in sight while the sheet is scrolled. */
export function NextLine({ children, at }: NextLineProps) {
  return (
    <div className="next-line screen-only" role="note" aria-label="What to do next">
      <p>
        <span className="next-word">Next</span> {children}
      </p>
      {at && (
        <Button className="plain" onPress={() => goToField(at)}>
          Go there
        </Button>
      )}
    </div>
  );
}

/** Puts the focus into the field of a path, or scrolls to the part that carries the path. */
export function goToField(at: string): void {
  const place = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(at)}"]`);
  place?.scrollIntoView({ block: 'center' });
  place?.focus({ preventScroll: true });
}
