import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Loupe } from './loupe.tsx';
import {
  lookingAt,
  type PhotoView,
  panned,
  type Size,
  toPixel,
  toScreen,
  wholeView,
  zoomed,
} from './photo-frame.ts';
import { arrows, PhotoHandle, type StageHandle } from './photo-handle.tsx';
import { type GestureActions, usePhotoGestures } from './use-photo-gestures.ts';

type Pixel = readonly [number, number];

export interface StageCurve {
  kind: 'traced' | 'stale';
  px: readonly Pixel[];
}
export interface PhotoStageProps {
  address: string;
  picture: Size;
  /** What is seen, for the screen reader. */
  label: string;
  handles: readonly StageHandle[];
  curves: readonly StageCurve[];
  /** Where the blank was lost. */
  lostPx: Pixel | undefined;
  /** What a tap sets: "the butt"; undefined: nothing. */
  sets: string | undefined;
  actions: GestureActions & { remove(id: string): void };
}

/** A photograph to look at closely and to tap on. */
export function PhotoStage(props: PhotoStageProps) {
  const { address, picture, label, handles, curves, lostPx, sets, actions } = props;
  const section = useRef<HTMLElement>(null);
  const [chosen, setView] = useState<PhotoView>();
  const [failed, setFailed] = useState(false);
  const stage = useStageSize(section, () => setView(undefined));
  const image = useRef<HTMLImageElement>(null);
  const view = chosen ?? wholeView(picture, stage);
  const place = (id: string) => handles.find((handle) => handle.id === id)?.px;
  const changeView = (next: (latest: PhotoView) => PhotoView) =>
    setView((latest) => next(latest ?? wholeView(picture, stage)));
  const { moving, handlers } = usePhotoGestures({ picture, stage, view, changeView }, place, actions);
  useWheel(section, (by, about) => changeView((latest) => zoomed(latest, by, about, picture, stage)));
  const middle = { x: stage.widthPx / 2, y: stage.heightPx / 2 };
  const zoom = (by: number) => setView(zoomed(view, by, middle, picture, stage));
  const shown = handles.map((handle) => (moving?.id === handle.id ? { ...handle, px: moving.px } : handle));

  const keys = (event: KeyboardEvent<HTMLElement>) => {
    if (event.target !== event.currentTarget) return;
    const [x, y] = arrows[event.key] ?? [0, 0];
    if (x || y) setView(panned(view, -60 * x, -60 * y, picture, stage));
    else if (event.key === '+' || event.key === '=') zoom(1.5);
    else if (event.key === '-') zoom(1 / 1.5);
    else if (event.key === '0') setView(undefined);
    else if (event.key === 'Enter' && sets) actions.tap(toPixel(view, middle));
    else return;
    event.preventDefault();
  };

  return (
    <div className="photo-stage-frame">
      <section
        ref={section}
        className={sets ? 'photo-stage photo-stage-sets' : 'photo-stage'}
        aria-label={`${label}. Arrow keys shift it, plus and minus zoom${sets ? `, Enter sets ${sets} at the crosshair` : ''}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is moved and zoomed by keys
        tabIndex={0}
        onKeyDown={keys}
        style={{ aspectRatio: `${picture.widthPx} / ${picture.heightPx}` }}
      >
        <img
          ref={image}
          className={view.scale > 3 ? 'photo-close' : ''}
          src={address}
          alt=""
          draggable={false}
          width={picture.widthPx}
          height={picture.heightPx}
          onError={() => setFailed(true)}
          style={{ transform: `translate(${view.leftPx}px, ${view.topPx}px) scale(${view.scale})` }}
        />
        <svg width={stage.widthPx} height={stage.heightPx} aria-label="Taps and curve" {...handlers}>
          <rect width={stage.widthPx} height={stage.heightPx} fill="transparent" />
          {curves.map(({ kind, px }) => (
            <Curve key={kind} kind={kind} path={pathOf(px, view)} />
          ))}
          {sets && chosen && <Crosshair {...middle} />}
          {lostPx && <Lost {...toScreen(view, lostPx)} />}
          {moving?.id === undefined && moving && <NewPoint {...toScreen(view, moving.px)} />}
          {shown.map((handle) => (
            <PhotoHandle
              key={handle.id}
              handle={handle}
              at={toScreen(view, handle.px)}
              onNudge={(x, y) => actions.move(handle.id, [handle.px[0] + x, handle.px[1] + y])}
              onRemove={() => actions.remove(handle.id)}
              onLook={() =>
                isOut(toScreen(view, handle.px), stage) && setView(lookingAt(handle.px, view, picture, stage))
              }
            />
          ))}
        </svg>
        {moving && (
          <Loupe
            image={image}
            px={moving.px}
            scale={view.scale}
            left={toScreen(view, moving.px).x > stage.widthPx / 2}
          />
        )}
        {failed && <p className="photo-failed attention">The picture cannot be shown by this browser.</p>}
      </section>
      <ZoomButtons
        zoom={zoom}
        whole={() => setView(undefined)}
        set={sets ? () => actions.tap(toPixel(view, middle)) : undefined}
      />
    </div>
  );
}

interface ZoomButtonsProps {
  zoom(by: number): void;
  whole(): void;
  /** Undefined while a tap sets nothing. */
  set: (() => void) | undefined;
}

function ZoomButtons({ zoom, whole, set }: ZoomButtonsProps) {
  return (
    <div className="photo-zoom screen-only">
      <Button className="button" aria-label="Zoom in" onPress={() => zoom(1.6)}>
        +
      </Button>
      <Button className="button" aria-label="Zoom out" onPress={() => zoom(1 / 1.6)}>
        −
      </Button>
      <Button className="button" onPress={whole}>
        Whole
      </Button>
      {set && (
        <Button className="button" onPress={set}>
          Set at the middle
        </Button>
      )}
    </div>
  );
}

/** The element's size, kept up to date; `changed` whenever it is another one. */
function useStageSize(element: RefObject<HTMLElement | null>, changed: () => void): Size {
  const [size, setSize] = useState<Size>({ widthPx: 0, heightPx: 0 });
  const tell = useLatest(changed);
  useEffect(() => {
    const stage = element.current;
    if (!stage) return undefined;
    const measure = () => {
      setSize({ widthPx: stage.clientWidth, heightPx: stage.clientHeight });
      tell.current();
    };
    const observer = new ResizeObserver(measure);
    observer.observe(stage);
    return () => observer.disconnect();
  }, [element, tell]);
  return size;
}

/** The wheel over the picture zooms it; the page does not scroll under it then. */
function useWheel(
  element: RefObject<HTMLElement | null>,
  zoom: (by: number, about: { x: number; y: number }) => void,
): void {
  const latest = useLatest(zoom);
  useEffect(() => {
    const stage = element.current;
    if (!stage) return undefined;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const box = stage.getBoundingClientRect();
      const by = Math.exp(-Math.max(-120, Math.min(120, event.deltaY)) / 300);
      latest.current(by, { x: event.clientX - box.left, y: event.clientY - box.top });
    };
    stage.addEventListener('wheel', turn, { passive: false });
    return () => stage.removeEventListener('wheel', turn);
  }, [element, latest]);
}

/** For what listens once and must call what stands now. */
function useLatest<T>(value: T): RefObject<T> {
  const latest = useRef(value);
  useEffect(() => {
    latest.current = value;
  });
  return latest;
}

function Curve({ kind, path }: { kind: StageCurve['kind']; path: string }) {
  return (
    <g className={`photo-curve photo-curve-${kind}`}>
      <path className="photo-curve-halo" d={path} />
      <path className="photo-curve-line" d={path} />
      <path className="photo-curve-hold" data-curve="" d={path} />
    </g>
  );
}

function pathOf(px: readonly Pixel[], view: PhotoView): string {
  return px
    .map((at, i) => {
      const { x, y } = toScreen(view, at);
      return `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join('');
}

function Crosshair({ x, y }: { x: number; y: number }) {
  return <path className="photo-crosshair" d={`M${x - 14} ${y}h10m8 0h10M${x} ${y - 14}v10m0 8v10`} />;
}

/** A point being pulled out of the curve. */
function NewPoint({ x, y }: { x: number; y: number }) {
  return <circle className="photo-new-point" r="7" cx={x} cy={y} />;
}

function Lost({ x, y }: { x: number; y: number }) {
  return <path className="photo-lost" d={`M${x - 9} ${y - 9}l18 18m0 -18l-18 18`} />;
}

function isOut({ x, y }: { x: number; y: number }, { widthPx, heightPx }: Size): boolean {
  return x < 0 || y < 0 || x > widthPx || y > heightPx;
}
