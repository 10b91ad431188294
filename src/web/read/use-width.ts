import { type RefCallback, useCallback, useState } from 'react';

/** Width in CSS px of the element the ref is put on, kept up to date; 0 until it is known. */
export function useWidth(): { ref: RefCallback<HTMLElement>; widthPx: number } {
  const [widthPx, setWidthPx] = useState(0);
  const ref = useCallback((element: HTMLElement | null) => {
    if (!element) return;
    const measure = () => setWidthPx(Math.floor(element.clientWidth));
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return { ref, widthPx };
}
