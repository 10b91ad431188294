import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useMemo } from 'react';
import type { RotationRequest } from '../../../engine/rotation/request.ts';
import { type CurvePoint, type TurnPoint, unrolled } from '../../../engine/rotation/unrolled.ts';
import { useShop } from '../../read/shop.tsx';
import { useWidth } from '../../read/use-width.ts';

interface TurnsDrawingProps {
  request: RotationRequest;
  /** The chosen line side. */
  lineSideRad: number | undefined;
  name: string;
}

const panelPx = 132;
const margin = { left: 52, right: 12, top: 26, foot: 40 };

/** The section's surface unrolled: the bow once per turn above, the stiffness twice per turn below, each with its band. */
export function TurnsDrawing({ request, lineSideRad, name }: TurnsDrawingProps) {
  const { ref, widthPx } = useWidth();
  const { system } = useShop();
  const unit = system === 'mm' ? { name: 'mm', perM: 1000 } : { name: 'in', perM: 1 / 0.0254 };
  const curves = useMemo(() => unrolled(request), [request]);
  if (!curves) return null;
  const x = scaleLinear([0, 2 * Math.PI], [margin.left, Math.max(margin.left + 1, widthPx - margin.right)]);
  const height = 2 * panelPx + margin.foot;
  const { bow, difference, points } = curves;
  const bowPoints = points.map((point) => ({ ...point, valueM: point.bowM }));
  const stiffnessPoints = points.map((point) => ({ ...point, valueM: point.differenceM }));
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg
          width={widthPx}
          height={height}
          viewBox={`0 0 ${widthPx} ${height}`}
          role="img"
          aria-label={`Bow and stiffness of ${name} round its circumference, with 95 % bands; the table below has the figures.`}
        >
          <Panel
            x={x}
            unit={unit}
            topPx={0}
            title={`bow, ${unit.name}: once per turn`}
            curve={bow}
            points={bowPoints}
          />
          <Panel
            x={x}
            unit={unit}
            topPx={panelPx}
            title={`second load less first, ${unit.name}: twice per turn, softer higher`}
            curve={difference}
            points={stiffnessPoints}
          />
          <TurnAxis x={x} heightPx={height} lineSideRad={lineSideRad} />
        </svg>
      )}
    </figure>
  );
}

interface PanelProps {
  x: ScaleLinear<number, number>;
  /** What the ticks count in. */
  unit: { perM: number };
  topPx: number;
  title: string;
  curve: readonly CurvePoint[];
  points: readonly (TurnPoint & { valueM: number })[];
}

function Panel({ x, unit, topPx, title, curve, points }: PanelProps) {
  const low = Math.min(...curve.map((at) => at.valueM - at.plusMinusM), ...points.map((at) => at.valueM));
  const high = Math.max(...curve.map((at) => at.valueM + at.plusMinusM), ...points.map((at) => at.valueM));
  const y = scaleLinear([low, high], [topPx + panelPx - 10, topPx + margin.top]);
  const band = area<CurvePoint>(
    (at) => x(at.turnRad),
    (at) => y(at.valueM - at.plusMinusM),
    (at) => y(at.valueM + at.plusMinusM),
  );
  const path = line<CurvePoint>(
    (at) => x(at.turnRad),
    (at) => y(at.valueM),
  );
  const [left, right] = x.range();
  return (
    <g>
      <text x={4} y={topPx + 14} className="axis-title">
        {title}
      </text>
      {scaleLinear([low * unit.perM, high * unit.perM], y.range())
        .ticks(3)
        .map((value) => (
          <g key={value}>
            <path d={`M${left} ${y(value / unit.perM)}H${right}`} className="grid-major" />
            <text x={left - 8} y={y(value / unit.perM) + 4} className="tick" textAnchor="end">
              {Number(value.toFixed(3))}
            </text>
          </g>
        ))}
      <path d={band([...curve]) ?? ''} className="band" />
      <path d={path([...curve]) ?? ''} className="curve" />
      {points.map(({ turnRad, valueM, odd }, index) => (
        <circle
          key={index}
          cx={x(turnRad - 2 * Math.PI * Math.floor(turnRad / (2 * Math.PI)))}
          cy={y(valueM)}
          r={4.5}
          className={odd ? 'turn-point turn-odd' : 'turn-point'}
        />
      ))}
    </g>
  );
}

function TurnAxis({
  x,
  heightPx,
  lineSideRad,
}: {
  x: PanelProps['x'];
  heightPx: number;
  lineSideRad?: number;
}) {
  const [left, right] = x.range();
  const step = right - left > 420 ? 45 : 90;
  const places = Array.from({ length: 360 / step + 1 }, (_, k) => k * step);
  const foot = heightPx - margin.foot;
  const side = lineSideRad === undefined ? undefined : (((lineSideRad / (2 * Math.PI)) % 1) + 1) % 1;
  return (
    <g>
      {places.map((degree) => (
        <g key={degree}>
          <path d={`M${x((degree * Math.PI) / 180)} ${foot}v6`} className="tick-mark" />
          <text
            x={x((degree * Math.PI) / 180)}
            y={foot + 20}
            className="tick"
            textAnchor={degree === 360 ? 'end' : 'middle'}
          >
            {degree}°
          </text>
        </g>
      ))}
      <text x={right} y={heightPx - 4} className="axis-title" textAnchor="end">
        facing down, from your mark
      </text>
      {side !== undefined && (
        <g>
          <path d={`M${x(2 * Math.PI * side)} ${margin.top}V${foot}`} className="turn-side" />
          <text x={left} y={heightPx - 4} className="axis-title">
            ┆ line side
          </text>
        </g>
      )}
    </g>
  );
}
