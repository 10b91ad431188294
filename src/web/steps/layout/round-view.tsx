import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { roundInWords } from '../../../words/round.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { Turning } from './use-turning.ts';

export interface RoundViewProps {
  model: SheetModel;
  turning: Turning;
  writer: LadderWriter;
  settled: SheetFrame;
  /** The guides stand for common practice and cannot be turned. */
  fixed: boolean;
}

const halfPx = 150;
const innerPx = 30;
const outerPx = 122;
const stepRad = Math.PI / 36;

/** Along the rod from behind the butt, the tip farthest away: every ring at its place round the blank, to be turned. */
export function RoundView({ model, turning, writer, settled, fixed }: RoundViewProps) {
  const svg = useRef<SVGSVGElement>(null);
  const { held } = turning;
  const by = model.choices.spiral?.by ?? 'right';
  const count = model.round.length;
  const at = (guide: number) => (held?.guide === guide ? held.fromTopRad : model.round[guide].fromTopRad);
  const places = model.round.map((_, guide) => placeOf(at(guide), by, guide, count));
  const over = overLimit(settled, model.limits.lineAngleRad);
  const turn = (event: PointerEvent<SVGSVGElement>) => {
    if (!held || !svg.current) return;
    const box = svg.current.getBoundingClientRect();
    const scale = (2 * halfPx) / box.width;
    const x = (event.clientX - box.left) * scale - halfPx;
    const y = (event.clientY - box.top) * scale - halfPx;
    turning.hold({ guide: held.guide, fromTopRad: nearest(fromTopOf(x, y, by), held.fromTopRad) });
  };
  const take = (event: PointerEvent<SVGSVGElement>) => {
    const name = (event.target as Element).closest?.('[data-guide]')?.getAttribute('data-guide');
    if (name === null || name === undefined || fixed || event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    turning.hold({ guide: Number(name), fromTopRad: at(Number(name)) });
    event.preventDefault();
  };
  return (
    <figure className="drawing round-view">
      {/* biome-ignore lint/a11y/useSemanticElements: the guides in it are sliders of their own */}
      <svg
        ref={svg}
        viewBox={`${-halfPx} ${-halfPx} ${2 * halfPx} ${2 * halfPx}`}
        role="group"
        aria-label="Along the rod from behind the butt; every guide is a slider round it"
        onPointerDown={take}
        onPointerMove={turn}
        onPointerUp={() => held && turning.left(held)}
        onPointerCancel={() => turning.hold(undefined)}
      >
        <RoundGrid />
        <path className="round-line" d={linePath(places)} />
        <circle className="round-blank" r={13} />
        <path className="round-reel" d={`M-16 ${-halfPx + 20}h32v-12h-32z`} />
        {places.map((place, guide) => (
          <g
            key={guide}
            data-guide={guide}
            className={`round-guide${over.has(guide) ? ' attention' : ''}${held?.guide === guide ? ' active' : ''}`}
            role="slider"
            tabIndex={fixed ? -1 : 0}
            aria-label={`Round the blank: guide ${guide + 1}`}
            aria-valuemin={-180}
            aria-valuemax={360}
            aria-valuenow={Math.round((at(guide) * 180) / Math.PI)}
            aria-valuetext={roundInWords(at(guide), by, writer)}
            aria-disabled={fixed || undefined}
            transform={`translate(${place.x.toFixed(1)} ${place.y.toFixed(1)})`}
            onKeyDown={(event) => step(event, guide, at(guide), turning)}
          >
            <circle className="round-hit" r={14} />
            <circle className="round-ring" r={6} />
            <text x={place.labelX} y={place.labelY} textAnchor="middle" dominantBaseline="central">
              {guide + 1}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className="aside small">
        {fixed
          ? 'Guide 1 is nearest the tip.'
          : 'Turn a guide with the finger or the arrow keys, 5° at a time.'}
      </figcaption>
    </figure>
  );
}

function RoundGrid() {
  const names = [
    { words: 'top', x: 34, y: -outerPx - 16 },
    { words: 'under', x: 0, y: outerPx + 18 },
    { words: 'left', x: -outerPx - 10, y: -10 },
    { words: 'right', x: outerPx + 10, y: -10 },
  ];
  const rays = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);
  return (
    <g className="round-grid">
      <path
        d={rays
          .map(
            (ray) => `M0 0L${(outerPx * Math.sin(ray)).toFixed(1)} ${(outerPx * Math.cos(ray)).toFixed(1)}`,
          )
          .join('')}
      />
      {names.map(({ words, x, y }) => (
        <text key={words} x={x} y={y} textAnchor="middle" dominantBaseline="central">
          {words}
        </text>
      ))}
    </g>
  );
}

/** Guide 0, next to the tip, is farthest from the eye and so nearest the middle. */
function radiusPx(guide: number, count: number): number {
  return innerPx + ((outerPx - innerPx) * (guide + 1)) / count;
}

function placeOf(fromTopRad: number, by: 'right' | 'left', guide: number, count: number) {
  const radius = radiusPx(guide, count);
  const beside = guide % 2 === 0 ? 16 : -16;
  const [right, up] = [(by === 'left' ? -1 : 1) * Math.sin(fromTopRad), Math.cos(fromTopRad)];
  // numbers stand beside their rings, square to the ray, in turn on either side
  return { x: radius * right, y: -radius * up, labelX: beside * up, labelY: beside * right };
}

function linePath(places: readonly { x: number; y: number }[]): string {
  const points = [{ x: 0, y: innerPx }, ...places, { x: 0, y: -halfPx + 18 }];
  return points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
}

function fromTopOf(x: number, y: number, by: 'right' | 'left'): number {
  return Math.round(Math.atan2(by === 'left' ? -x : x, -y) / stepRad) * stepRad;
}

/** The same place, written so that it is nearest to the one before. */
function nearest(angle: number, before: number): number {
  return angle + 2 * Math.PI * Math.round((before - angle) / (2 * Math.PI));
}

function step(event: KeyboardEvent, guide: number, fromTopRad: number, { left }: Turning): void {
  const ticks = event.shiftKey ? 3 : 1;
  const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
  if (by === undefined) return;
  event.preventDefault();
  left({ guide, fromTopRad: (Math.round(fromTopRad / stepRad) + by * ticks) * stepRad });
}

/** Guides whose ring turns the line beyond the limit; the stripping guide's turn is the reel's and the hand's. */
function overLimit({ ours, fromTipM }: SheetFrame, limitRad: number): ReadonlySet<number> {
  const over = new Set<number>();
  for (const { rings } of ours?.reading.loads ?? []) {
    rings.forEach(({ lineAngleRad }, ring) => {
      if (ring > 0 && ring < fromTipM.length && lineAngleRad > limitRad) over.add(ring - 1);
    });
  }
  return over;
}
