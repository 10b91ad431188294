import { type KeyboardEvent, type PointerEvent, useCallback, useRef } from 'react';
import type { Tape } from '../../../engine/layout/guide-moves.ts';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import { useWidth } from '../../read/use-width.ts';
import type { LiveSheet } from './live-sheet.ts';
import { RulerDrawing } from './ruler-drawing.ts';
import type { RulerModel } from './ruler-model.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface RulerProps {
  sheet: LiveSheet;
  model: RulerModel;
  tape: Tape;
  attentionOf(frame: SheetFrame): ReadonlySet<number>;
  /** A guide was left at another place; `gesture` is the same while the same guide is stepped by key. */
  onMoved(guide: number, fromTipM: number): void;
  /** A guide was taken in hand, or let go of. */
  onActive(guide: number | undefined): void;
  /** Pins or unpins a guide. */
  onPin(guide: number): void;
  /** Why the guide in hand went no further; empty where it moves freely. */
  stopWords(frame: SheetFrame): string;
}

/** The straight rod, tip left: every guide can be dragged, or stepped by key. */
export function Ruler(props: RulerProps) {
  const { sheet, model } = props;
  const { ref, widthPx } = useWidth();
  const drawing = useRef<RulerDrawing>(undefined);
  const laid = useRef<{ model: RulerModel; widthPx: number }>(undefined);
  const stop = useRef<HTMLParagraphElement>(null);
  const makeDrawing = useCallback((svg: SVGSVGElement | null) => {
    drawing.current = svg ? new RulerDrawing(svg) : undefined;
    laid.current = undefined;
  }, []);
  usePainted(sheet, (frame) => {
    if (!drawing.current || widthPx === 0) return;
    if (laid.current?.model !== model || laid.current.widthPx !== widthPx) {
      drawing.current.lay(model, rulerWidth(widthPx));
      laid.current = { model, widthPx };
    }
    drawing.current.paint({ frame, attention: props.attentionOf(frame) });
    if (stop.current) paintFigure(stop.current, props.stopWords(frame));
  });
  const hand = useHand(props, drawing);
  return (
    <figure ref={ref} className="drawing ruler">
      <div className="ruler-slide">
        {/* biome-ignore lint/a11y/useSemanticElements: the guides in it are sliders of their own */}
        <svg
          ref={makeDrawing}
          role="group"
          aria-label="The straight rod from the tip; every guide is a slider"
          {...hand}
        />
      </div>
      <p ref={stop} className="ruler-stop" role="status" />
    </figure>
  );
}

/** Pointer, touch and keys on the guides, by delegation. */
function useHand(
  { sheet, model, tape, onMoved, onActive, onPin }: RulerProps,
  drawing: { current?: RulerDrawing },
) {
  const held = useRef<Held>(undefined);
  const guideOf = (target: EventTarget) => {
    const name = (target as Element).closest?.('[data-guide]')?.getAttribute('data-guide');
    return name === null || name === undefined ? undefined : Number(name);
  };
  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    const guide = guideOf(event.target);
    if (guide === undefined || event.button !== 0 || !drawing.current) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const fromM = sheet.frame.fromTipM[guide];
    const offsetM = fromM - drawing.current.stationAt(event.clientX);
    held.current = { guide, offsetM, fromM, fromPx: event.clientX, moving: false };
    drawing.current.focus(guide);
    event.preventDefault();
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    if (!held.current || !drawing.current) return;
    const { guide, offsetM, fromPx } = held.current;
    held.current.moving ||= Math.abs(event.clientX - fromPx) >= leastMovePx;
    if (!held.current.moving) return;
    sheet.drag(guide, drawing.current.stationAt(event.clientX) + offsetM, tape);
  };
  const letGo = () => {
    if (!held.current) return;
    const { guide, fromM, moving } = held.current;
    held.current = undefined;
    if (!moving) return;
    const at = sheet.drop(guide);
    if (at !== fromM) onMoved(guide, at);
  };
  const takeBack = () => {
    if (!held.current) return;
    held.current = undefined;
    sheet.cancel();
  };
  const onKeyDown = (event: KeyboardEvent<SVGSVGElement>) => {
    const guide = guideOf(event.target);
    if (guide === undefined) return;
    if (event.key === 'Escape' && held.current) return takeBack();
    if (event.key === 'p' && !event.ctrlKey && !event.metaKey) return onPin(guide);
    const byM = keyMove(event, { guide, at: sheet.frame.fromTipM[guide], model, tape });
    if (byM === undefined) return;
    event.preventDefault();
    const before = sheet.frame.fromTipM[guide];
    const at = sheet.step(guide, byM, tape, event.repeat);
    if (at !== before) onMoved(guide, at);
  };
  return {
    onPointerDown,
    onPointerMove,
    onPointerUp: letGo,
    onPointerCancel: takeBack,
    onKeyDown,
    onFocus: (event: { target: EventTarget }) => {
      const guide = guideOf(event.target);
      if (guide === undefined) return;
      sheet.activate(guide);
      onActive(guide);
    },
  };
}

/** On a phone the rod is drawn longer than the screen and slides under the finger: guides keep a thumb's distance. */
function rulerWidth(widthPx: number): number {
  return widthPx < narrowPx ? widthPx * timesLonger : widthPx;
}
const narrowPx = 520;
const timesLonger = 2.6;

/** A finger that only touches does not move a guide. */
const leastMovePx = 3;

interface Held {
  guide: number;
  /** From where it was taken hold of to the guide, so that it does not jump. */
  offsetM: number;
  fromM: number;
  fromPx: number;
  moving: boolean;
}

interface KeyPlace {
  guide: number;
  at: number;
  model: RulerModel;
  tape: Tape;
}

/** Arrows one tick, with Shift or by page ten; Home and End to the ends of the slack. */
function keyMove(event: KeyboardEvent, { guide, at, model, tape }: KeyPlace): number | undefined {
  const ticks = event.shiftKey ? 10 : 1;
  const slack = model.slack?.[guide];
  switch (event.key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return ticks * tape.stepM;
    case 'ArrowLeft':
    case 'ArrowDown':
      return -ticks * tape.stepM;
    case 'PageUp':
      return 10 * tape.stepM;
    case 'PageDown':
      return -10 * tape.stepM;
    case 'Home':
      return slack ? slack.fromTipM - at : undefined;
    case 'End':
      return slack ? slack.toTipM - at : undefined;
    default:
      return undefined;
  }
}
