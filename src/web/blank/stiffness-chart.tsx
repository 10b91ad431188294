import { type ScaleLinear, type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { AssembledBlank } from '../../engine/bench/assemble.ts';
import type { StiffnessBandRow } from '../../engine/stiffness/request.ts';
import { useShop } from '../read/shop.tsx';
import { useWidth } from '../read/use-width.ts';
import { decadeLines, stationTicks } from './chart-ticks.ts';

export interface StiffnessChartProps {
  stiffness: readonly StiffnessBandRow[];
  blank: AssembledBlank;
}

interface Frame {
  x: ScaleLinear<number, number>;
  y: ScaleLogarithmic<number, number>;
  widthPx: number;
  height: number;
}

const margin = { left: 56, right: 14, top: 28, bottom: 44 };

/** Stiffness along the blank on a logarithmic scale, tip left, with the band that holds the truth 95 times of 100. */
export function StiffnessChart({ stiffness, blank }: StiffnessChartProps) {
  const { ref, widthPx } = useWidth();
  const frame = frameOf(stiffness, blank.lengthM, widthPx);
  const { x, y, height } = frame;
  const band = area<StiffnessBandRow>(
    (row) => x(row.fromTipM),
    (row) => y(row.lowNm2),
    (row) => y(row.highNm2),
  );
  const curve = line<StiffnessBandRow>(
    (row) => x(row.fromTipM),
    (row) => y(row.EINm2),
  );
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg
          width={widthPx}
          height={height}
          viewBox={`0 0 ${widthPx} ${height}`}
          role="img"
          aria-label="Stiffness along the blank with its 95 % band; the table below has the figures."
        >
          <StiffnessAxis frame={frame} />
          <Ferrules frame={frame} blank={blank} />
          <path d={band([...stiffness]) ?? ''} className="band" />
          <path d={curve([...stiffness]) ?? ''} className="curve" />
          <StationAxis frame={frame} lengthM={blank.lengthM} />
        </svg>
      )}
    </figure>
  );
}

function frameOf(stiffness: readonly StiffnessBandRow[], lengthM: number, widthPx: number): Frame {
  const height = Math.round(Math.min(380, Math.max(240, widthPx * 0.36)));
  const right = Math.max(margin.left + 1, widthPx - margin.right);
  const low = 0.8 * Math.min(...stiffness.map((row) => row.lowNm2));
  const high = 1.25 * Math.max(...stiffness.map((row) => row.highNm2));
  return {
    x: scaleLinear([0, lengthM], [margin.left, right]),
    y: scaleLog([low, high], [height - margin.bottom, margin.top]),
    widthPx,
    height,
  };
}

function StiffnessAxis({ frame: { y, widthPx } }: { frame: Frame }) {
  return (
    <g>
      {decadeLines(y.domain()).map(({ value, major }) => (
        <g key={value}>
          <path
            d={`M${margin.left} ${y(value)}H${widthPx - margin.right}`}
            className={major ? 'grid-major' : 'grid-minor'}
          />
          {major && (
            <text x={margin.left - 8} y={y(value) + 4} className="tick" textAnchor="end">
              {value}
            </text>
          )}
        </g>
      ))}
      <text x={margin.left - 40} y={14} className="axis-title">
        EI in N·m²
      </text>
    </g>
  );
}

function Ferrules({ frame: { x, height }, blank }: { frame: Frame; blank: AssembledBlank }) {
  return blank.joints.map(({ seat, upper }) => (
    <rect
      key={upper}
      x={x(seat.fromTipM)}
      width={Math.max(2, x(seat.toTipM) - x(seat.fromTipM))}
      y={margin.top}
      height={height - margin.top - margin.bottom}
      className="ferrule-zone"
    />
  ));
}

function StationAxis({ frame: { x, widthPx, height }, lengthM }: { frame: Frame; lengthM: number }) {
  const { system } = useShop();
  const foot = height - margin.bottom;
  return (
    <g>
      {stationTicks(lengthM, system, widthPx).map(({ fromTipM, words }) => (
        <g key={words}>
          <path d={`M${x(fromTipM)} ${foot}v6`} className="tick-mark" />
          <text x={x(fromTipM)} y={foot + 20} className="tick" textAnchor="middle">
            {words}
          </text>
        </g>
      ))}
      <text x={widthPx - margin.right} y={height - 6} className="axis-title" textAnchor="end">
        from the tip
      </text>
    </g>
  );
}
