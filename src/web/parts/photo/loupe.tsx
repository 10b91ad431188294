import { type RefObject, useEffect, useRef } from 'react';

export interface LoupeProps {
  image: RefObject<HTMLImageElement | null>;
  px: readonly [number, number];
  /** CSS px a picture's pixel takes on the stage. */
  scale: number;
  /** On the stage's left side, away from the finger. */
  left: boolean;
}

const sidePx = 152;

/** What the finger covers, three times as large as on the stage, with a cross where the point will be. */
export function Loupe({ image, px, scale, left }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || !image.current) return;
    const shown = sidePx / Math.max(2, 3 * scale);
    context.imageSmoothingEnabled = shown > sidePx / 3;
    context.fillStyle = '#888';
    context.fillRect(0, 0, sidePx, sidePx);
    const [left, top] = [px[0] + 0.5 - shown / 2, px[1] + 0.5 - shown / 2];
    context.drawImage(image.current, left, top, shown, shown, 0, 0, sidePx, sidePx);
  }, [image, px, scale]);
  const middle = sidePx / 2;
  return (
    <div className={left ? 'photo-loupe photo-loupe-left' : 'photo-loupe'} aria-hidden="true">
      <canvas ref={canvas} width={sidePx} height={sidePx} />
      <svg width={sidePx} height={sidePx} aria-hidden="true">
        <path
          className="photo-crosshair"
          d={`M${middle - 22} ${middle}h18m8 0h18M${middle} ${middle - 22}v18m0 8v18`}
        />
      </svg>
    </div>
  );
}
