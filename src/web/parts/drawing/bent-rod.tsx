import { type PointerEvent, useCallback, useId, useRef } from 'react';
import { flagInWords } from '../../../words/places.ts';
import type { Writer } from '../../../words/writer.ts';
import { useWidth } from '../../read/use-width.ts';
import type { BendView } from './bend-view.ts';
import { BentRodDrawing } from './bent-rod-drawing.ts';
import { paintFigure } from './fraction-text.ts';
import { type Moving, usePainted } from './use-painted.ts';
import './bend.css';

export interface BentRodProps<F> {
  moving: Moving<F>;
  viewOf(frame: F): BendView | undefined;
  /** What is drawn, for the screen reader. */
  label: string;
  /** Station of the front of the grip. */
  lengthM: number;
  /** What the flag reads is said in the shop's units. */
  writer: Writer;
}

/** The bent rod with a flag on it that reads height and distance wherever it is put. */
export function BentRod<F>(props: BentRodProps<F>) {
  const { moving, viewOf, lengthM, writer, label } = props;
  const id = useId();
  const { ref, widthPx } = useWidth();
  const drawing = useRef<BentRodDrawing>(undefined);
  const range = useRef<HTMLInputElement>(null);
  const readout = useRef<HTMLOutputElement>(null);
  const flagM = useRef(0);
  const makeDrawing = useCallback((svg: SVGSVGElement | null) => {
    drawing.current = svg ? new BentRodDrawing(svg) : undefined;
  }, []);

  const readFlag = () => {
    const reading = drawing.current?.flag(flagM.current);
    if (!reading || !readout.current || !range.current) return;
    const words = flagInWords(reading, writer);
    paintFigure(readout.current, words);
    range.current.setAttribute('aria-valuetext', words.replaceAll('⁄', '/'));
  };
  const moveFlag = (toM: number) => {
    flagM.current = toM;
    if (range.current) range.current.value = String(toM);
    readFlag();
  };
  const follow = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const near = drawing.current?.stationNear(event.clientX - box.left, event.clientY - box.top, 36);
    if (near !== undefined) moveFlag(near);
  };
  usePainted(moving, (frame) => {
    const view = viewOf(frame);
    drawing.current?.resize(widthPx, mostHeightPx(widthPx));
    if (!view) return;
    drawing.current?.paint(view);
    readFlag();
  });

  return (
    <figure ref={ref} className="drawing bend">
      <svg
        ref={makeDrawing}
        role="img"
        aria-label={label}
        aria-describedby={`${id}-readout`}
        onPointerMove={follow}
        onPointerDown={follow}
      />
      <figcaption className="bend-flag">
        <label htmlFor={`${id}-flag`}>Flag</label>
        <input
          ref={range}
          id={`${id}-flag`}
          type="range"
          min={0}
          max={lengthM}
          step={writer.units === 'mm' ? 0.005 : 0.0254 / 4}
          defaultValue={0}
          onInput={(event) => moveFlag(Number(event.currentTarget.value))}
        />
        <output
          ref={readout}
          id={`${id}-readout`}
          htmlFor={`${id}-flag`}
          className="figures"
          aria-live="off"
        />
      </figcaption>
    </figure>
  );
}

/** Half of the window, so that the straight rod below the bend is on the same screen. */
function mostHeightPx(widthPx: number): number {
  return Math.min(520, Math.max(300, widthPx * 0.92), Math.max(260, window.innerHeight * 0.48));
}
