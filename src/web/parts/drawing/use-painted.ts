import { useEffect, useLayoutEffect, useRef } from 'react';

/** Something that changes faster than React should render: its newest frame, and who hears of the next ones. */
export interface Moving<F> {
  readonly frame: F;
  subscribe(painter: (frame: F) => void): () => void;
}

/** Calls `paint` after every render and with every new frame; what it touches, React leaves alone. */
export function usePainted<F>(moving: Moving<F>, paint: (frame: F) => void): void {
  const latest = useRef(paint);
  useLayoutEffect(() => {
    latest.current = paint;
    paint(moving.frame);
  });
  useEffect(() => moving.subscribe((frame) => latest.current(frame)), [moving]);
}
