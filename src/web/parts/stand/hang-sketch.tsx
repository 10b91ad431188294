import type { ShapePoint } from '../../../engine/flow/expected-reading.ts';
import { wallMarkOutlines } from '../../../engine/wall-mark/wall-mark.ts';
import { SetupFigure, setupFigureBox } from '../drawing/setup-figure.tsx';

/** What to hang, large: the blank as it should bend, between the marks on the wall. */
export function HangSketch({ shape, weight }: { shape: readonly ShapePoint[]; weight: string }) {
  const hung = weight === '' ? 'nothing hung' : `${weight} at its tip`;
  return (
    <SetupFigure
      shape={shape}
      weight={weight}
      label={`The blank held in the clamp between the marks on the wall, ${hung}`}
    >
      {markPlaces.map(([x, y], i) => (
        <path key={`${x} ${y}`} d={markPath(i + 1, x, y)} className="sketch-mark" />
      ))}
    </SetupFigure>
  );
}

const { width, height } = setupFigureBox;
const markRadius = 11;
const markPlaces: readonly (readonly [number, number])[] = [
  [20, height - 20],
  [width - 20, height - 20],
  [width - 20, 20],
  [20, 20],
  [width / 2, 20],
  [width / 2, height - 20],
];

function markPath(number: number, x: number, y: number): string {
  return wallMarkOutlines(number, Math.PI / 24)
    .rings.map((ring) => {
      const points = ring.map(
        (at) => `${(x + markRadius * at.x).toFixed(1)} ${(y - markRadius * at.y).toFixed(1)}`,
      );
      return `M${points.join('L')}Z`;
    })
    .join('');
}
