import { useCallback, useRef } from 'react';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import { useWidth } from '../../read/use-width.ts';
import type { LiveSheet } from './live-sheet.ts';
import { StripsDrawing, type StripsModel } from './strips-drawing.ts';

/** Line angle, gap and extra bend along the rod, under the ruler and on its scale. */
export function Strips({ sheet, model, label }: { sheet: LiveSheet; model: StripsModel; label: string }) {
  const { ref, widthPx } = useWidth();
  const drawing = useRef<StripsDrawing>(undefined);
  const makeDrawing = useCallback((svg: SVGSVGElement | null) => {
    drawing.current = svg ? new StripsDrawing(svg) : undefined;
  }, []);
  usePainted(sheet, (frame) => {
    if (widthPx === 0) return;
    drawing.current?.resize(model, widthPx, widthPx < 600 ? 60 : 68);
    drawing.current?.paint(model, frame);
  });
  return (
    <figure ref={ref} className="drawing strips">
      <svg ref={makeDrawing} role="img" aria-label={label} />
      <figcaption className="strips-key small quiet">
        <span className="key-drawn">the load drawn</span>
        <span className="key-others">the other loads</span>
        <span className="key-start">the start</span>
        <span className="key-limit">limit</span>
      </figcaption>
    </figure>
  );
}
