import { useEffect, useRef } from 'react';
import { useLocation } from 'wouter';

/**
 * Says which step is at hand, to a reader that speaks. Whoever goes on to another step or screen lands here, at the
 * top of the sheet, and not on a link that is gone.
 */
export function StepHeading({ name }: { name: string }) {
  const [path] = useLocation();
  const heading = useRef<HTMLHeadingElement>(null);
  const before = useRef(path);
  useEffect(() => {
    if (before.current === path) return;
    before.current = path;
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, [path]);
  return (
    <h2 ref={heading} tabIndex={-1} className="visually-hidden">
      {name}
    </h2>
  );
}
