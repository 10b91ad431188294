import type { ReactNode } from 'react';

const ways = [
  'Butt and tip and all marks in the picture, with room around them; the telephone as far back as it takes.',
  'Square on to the plane in which the rod bends, its lens at half the height of the bend; no wide-angle lens.',
  'At least four marks round the rod, in that plane: six or more, and the lens is estimated too.',
  'A plain wall behind, nothing else long and thin; light from the side; wait until the weight hangs still.',
  'For small angles a close-up of the top third besides: nothing touched between, at least four of the same marks in it, with the same places.',
];

/** How the picture should be taken: what the tracing needs; `children` is what helps to prepare it. */
export function HowToTakeIt({ children }: { children?: ReactNode }) {
  return (
    <details className="photo-fold">
      <summary>How to take the picture</summary>
      <ul>
        {ways.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {children}
      <p className="quiet small">From what the tracing of painted pictures showed to matter; no standard.</p>
    </details>
  );
}
