import type { PointerEvent, RefObject } from 'react';
import type { LiveLook } from '../../../image/live/look-live.ts';
import { fanAt, fanSizeFor } from '../../parts/drawing/line-fans.ts';
import type { LiveReadings, LiveRing } from './live-readings.ts';

type Pixel = readonly [number, number];

export interface LiveStageProps {
  video: RefObject<HTMLVideoElement | null>;
  look: LiveLook | undefined;
  readings: LiveReadings | undefined;
  limitRad: number | undefined;
  /** The prediction, hold to tip. */
  predicted: readonly Pixel[] | undefined;
  taps: readonly Pixel[];
  /** Set while taps are wanted. */
  onTap: ((px: Pixel) => void) | undefined;
}

/** The camera's picture with what was read from it drawn over. */
export function LiveStage({ video, look, readings, limitRad, predicted, taps, onTap }: LiveStageProps) {
  const size = look ?? { widthPx: 1600, heightPx: 1200 };
  const tap = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = size.widthPx / box.width;
    onTap?.([(event.clientX - box.left) * scale, (event.clientY - box.top) * scale]);
  };
  const unit = size.widthPx / 400;
  return (
    <div className="live-stage" style={{ aspectRatio: `${size.widthPx} / ${size.heightPx}` }}>
      <video ref={video} muted playsInline aria-label="What the camera sees" />
      <svg
        viewBox={`0 0 ${size.widthPx} ${size.heightPx}`}
        className={onTap ? 'live-taps' : undefined}
        onPointerDown={tap}
        role="img"
        aria-label="The curve that was read"
      >
        {look?.marks.map(({ number, px: [x, y], radiusPx, known }) => (
          <circle
            key={number}
            className={known ? 'live-mark' : 'live-mark unknown'}
            cx={x}
            cy={y}
            r={1.25 * radiusPx}
          />
        ))}
        {look?.status === 'traced' && <Line name="live-curve" px={look.points.map(({ px }) => px)} />}
        {predicted && <Predicted px={predicted} unit={unit} />}
        {readings && limitRad !== undefined && (
          <Rings readings={readings} limitRad={limitRad} widthPx={size.widthPx} unit={unit} />
        )}
        {taps.map(([x, y], i) => (
          <circle key={i} className="live-tap" cx={x} cy={y} r={6 * unit} />
        ))}
      </svg>
    </div>
  );
}

function Line({ name, px }: { name: string; px: readonly Pixel[] }) {
  return <path className={name} d={`M${px.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`} />;
}

function Predicted({ px, unit }: { px: readonly Pixel[]; unit: number }) {
  const [x, y] = px[px.length - 1];
  const arm = 9 * unit;
  return (
    <g className="live-predicted">
      <Line name="live-dashed" px={px} />
      <path d={`M${x - arm} ${y}h${2 * arm}M${x} ${y - arm}v${2 * arm}`} />
    </g>
  );
}

interface RingsProps {
  readings: LiveReadings;
  limitRad: number;
  widthPx: number;
  unit: number;
}

function Rings({ readings: { rings, worstAngle }, limitRad, widthPx, unit }: RingsProps) {
  const { clearPx, lengthPx } = fanSizeFor(400);
  const size = { clearPx: clearPx * unit, lengthPx: lengthPx * unit };
  const at = ({ px: [x, y] }: LiveRing) => ({ x, y });
  return (
    <g className="live-rings">
      {rings.map((ring, i) => {
        const { value } = ring.lineAngle ?? {};
        const fan =
          value === undefined
            ? undefined
            : fanAt([at(rings[i - 1]), at(ring), at(rings[i + 1])], value, limitRad, size);
        const worst = worstAngle?.ring === ring.ring;
        return (
          <g key={ring.ring} className={fan?.isOver ? 'over' : worst ? 'worst' : undefined}>
            {fan && <path className="live-limit" d={fan.limit} />}
            {fan && <path className="live-turn" d={fan.turn} />}
            <circle cx={ring.px[0]} cy={ring.px[1]} r={widthPx / 160} />
            {fan && worst && (
              <text x={fan.label.x} y={fan.label.y} fontSize={15 * unit}>
                {ring.ring}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
