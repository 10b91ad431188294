import type { ReactNode } from 'react';

/** A table that may be wider than the screen: it scrolls in its own frame, which the keyboard can reach. */
export function TableFrame({
  label,
  className,
  at,
  children,
}: {
  label: string;
  className?: string;
  /** Where “Go there” leads. */
  at?: string;
  children: ReactNode;
}) {
  return (
    <section
      className={className ? `table-frame ${className}` : 'table-frame'}
      aria-label={label}
      data-path={at}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached without a pointer
      tabIndex={0}
    >
      {children}
    </section>
  );
}
