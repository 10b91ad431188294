import { type ScaleLinear, type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { useShop } from '../../read/shop.tsx';
import { decadeLines, stationTicks } from './chart-ticks.ts';

export interface Frame {
  x: ScaleLinear<number, number>;
  y: ScaleLogarithmic<number, number>;
  widthPx: number;
  height: number;
}

export const frameMargin = { left: 56, right: 14, top: 28, bottom: 44 };

/** Room for every row's band: `rows` may be of the fit and of what is set beside it. */
export function stiffnessFrame(
  rows: readonly Pick<StiffnessBandRow, 'lowNm2' | 'highNm2'>[],
  lengthM: number,
  widthPx: number,
): Frame {
  const height = Math.round(Math.min(380, Math.max(240, widthPx * 0.36)));
  const right = Math.max(frameMargin.left + 1, widthPx - frameMargin.right);
  const low = 0.8 * Math.min(...rows.map((row) => row.lowNm2));
  const high = 1.25 * Math.max(...rows.map((row) => row.highNm2));
  return {
    x: scaleLinear([0, lengthM], [frameMargin.left, right]),
    y: scaleLog([low, high], [height - frameMargin.bottom, frameMargin.top]),
    widthPx,
    height,
  };
}

/** The fit's curve over the band that holds the truth 95 times of 100. */
export function StiffnessCurve({
  frame: { x, y },
  rows,
}: {
  frame: Frame;
  rows: readonly StiffnessBandRow[];
}) {
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
    <>
      <path d={band([...rows]) ?? ''} className="band" />
      <path d={curve([...rows]) ?? ''} className="curve" />
    </>
  );
}

export function StiffnessAxis({ frame: { y, widthPx } }: { frame: Frame }) {
  return (
    <g>
      {decadeLines(y.domain()).map(({ value, major }) => (
        <g key={value}>
          <path
            d={`M${frameMargin.left} ${y(value)}H${widthPx - frameMargin.right}`}
            className={major ? 'grid-major' : 'grid-minor'}
          />
          {major && (
            <text x={frameMargin.left - 8} y={y(value) + 4} className="tick" textAnchor="end">
              {value}
            </text>
          )}
        </g>
      ))}
      <text x={frameMargin.left - 40} y={14} className="axis-title">
        EI in N·m²
      </text>
    </g>
  );
}

export function StationAxis({ frame: { x, widthPx, height }, lengthM }: { frame: Frame; lengthM: number }) {
  const { system } = useShop();
  const foot = height - frameMargin.bottom;
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
      <text x={widthPx - frameMargin.right} y={height - 6} className="axis-title" textAnchor="end">
        from the tip
      </text>
    </g>
  );
}
