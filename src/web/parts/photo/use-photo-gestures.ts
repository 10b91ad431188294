import { type PointerEvent, useRef, useState } from 'react';
import {
  inside,
  type PhotoView,
  panned,
  type ScreenPoint,
  type Size,
  toPixel,
  toScreen,
  zoomed,
} from './photo-frame.ts';

export interface GestureActions {
  /** A tap on the picture where nothing was held. */
  tap(px: [number, number]): void;
  /** A handle was let go at another place. */
  move(id: string, px: [number, number]): void;
  /** The curve was pulled to a place. */
  bend(px: [number, number]): void;
}
export interface Moving {
  /** Undefined: a new point pulled out of the curve. */
  id: string | undefined;
  px: [number, number];
}

/** Fingers tremble; less than this is a tap. */
const stillPx = 5;

/**
 * One pointer moves a handle, pulls the curve or shifts the picture; two zoom it. `data-handle` and `data-curve`
 * on an element under the pointer say what is held.
 */
export function usePhotoGestures(
  { picture, stage, view, changeView }: Looked,
  handlePx: (id: string) => readonly [number, number] | undefined,
  actions: GestureActions,
) {
  const pointers = useRef(new Map<number, ScreenPoint>());
  const held = useRef<Held>(undefined);
  const [moving, setMoving] = useState<Moving>();

  const down = (event: PointerEvent<Element>) => {
    if (event.button !== 0) return;
    const at = placeOf(event);
    event.currentTarget.setPointerCapture(event.pointerId);
    pointers.current.set(event.pointerId, at);
    if (pointers.current.size > 1) {
      held.current = undefined;
      setMoving(undefined);
      return;
    }
    const target = event.target as Element;
    const id = target.closest('[data-handle]')?.getAttribute('data-handle') ?? undefined;
    const px = id === undefined ? undefined : handlePx(id);
    const grabbed = px && toScreen(view, px);
    held.current = {
      what: grabbed ? 'handle' : target.closest('[data-curve]') ? 'curve' : 'picture',
      id,
      start: at,
      // A handle does not jump under the finger that takes it beside its middle.
      shift: grabbed ? { x: grabbed.x - at.x, y: grabbed.y - at.y } : { x: 0, y: 0 },
      moved: false,
    };
  };

  const move = (event: PointerEvent<Element>) => {
    const before = pointers.current.get(event.pointerId);
    if (!before) return;
    const at = placeOf(event);
    const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1];
    pointers.current.set(event.pointerId, at);
    if (other) return changeView((latest) => pinched(latest, before, at, other, picture, stage));
    const hold = held.current;
    if (!hold) return;
    if (!hold.moved && Math.hypot(at.x - hold.start.x, at.y - hold.start.y) < stillPx) return;
    hold.moved = true;
    if (hold.what === 'picture')
      changeView((latest) => panned(latest, at.x - before.x, at.y - before.y, picture, stage));
    else setMoving({ id: hold.id, px: pixelAt(at, hold) });
  };

  const up = (event: PointerEvent<Element>) => {
    const at = placeOf(event);
    pointers.current.delete(event.pointerId);
    const hold = held.current;
    held.current = undefined;
    setMoving(undefined);
    if (!hold) return;
    if (hold.what === 'handle' && hold.moved && hold.id !== undefined)
      actions.move(hold.id, pixelAt(at, hold));
    else if (hold.what === 'curve' && hold.moved) actions.bend(pixelAt(at, hold));
    else if (hold.what !== 'handle' && !hold.moved) tapIfInside(at);
  };

  const pixelAt = (at: ScreenPoint, { shift }: Held) =>
    inside(toPixel(view, { x: at.x + shift.x, y: at.y + shift.y }), picture);
  const tapIfInside = (at: ScreenPoint) => {
    const px = toPixel(view, at);
    const [x, y] = inside(px, picture);
    if (Math.hypot(x - px[0], y - px[1]) < 2) actions.tap([x, y]);
  };
  const cancel = (event: PointerEvent<Element>) => {
    pointers.current.delete(event.pointerId);
    held.current = undefined;
    setMoving(undefined);
  };
  return {
    moving,
    handlers: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel },
  };
}

interface Looked {
  picture: Size;
  stage: Size;
  view: PhotoView;
  /** From the view that stands by then: two fingers move before the page is drawn anew. */
  changeView(next: (latest: PhotoView) => PhotoView): void;
}
interface Held {
  what: 'handle' | 'curve' | 'picture';
  id: string | undefined;
  start: ScreenPoint;
  shift: ScreenPoint;
  moved: boolean;
}

function placeOf(event: PointerEvent<Element>): ScreenPoint {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

/** Two fingers: zoomed by how far they part, shifted with their middle. */
function pinched(
  view: PhotoView,
  before: ScreenPoint,
  at: ScreenPoint,
  other: ScreenPoint,
  picture: Size,
  stage: Size,
): PhotoView {
  const apart = (a: ScreenPoint) => Math.max(8, Math.hypot(a.x - other.x, a.y - other.y));
  const middle = { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 };
  const grown = zoomed(view, apart(at) / apart(before), middle, picture, stage);
  return panned(grown, (at.x - before.x) / 2, (at.y - before.y) / 2, picture, stage);
}
