import { scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { StiffnessBandRow } from '../../engine/stiffness/request.ts';
import type { WindowEstimate } from '../../engine/stiffness/second-estimate.ts';
import { decadeLines, stationTicks } from '../blank/chart-ticks.ts';
import { useShop } from '../read/shop.tsx';
import { useWidth } from '../read/use-width.ts';
import '../blank/blank.css';

const margin = { left: 56, right: 14, top: 28, bottom: 44 };

/** The fit's band and curve, and over them every window's own stiffness with its ± as a bar. */
export function SecondEstimateChart(props: {
  stiffness: readonly StiffnessBandRow[];
  windows: readonly WindowEstimate[];
  lengthM: number;
}) {
  const { stiffness, windows, lengthM } = props;
  const { ref, widthPx } = useWidth();
  const { system } = useShop();
  const height = Math.round(Math.min(360, Math.max(240, widthPx * 0.34)));
  const foot = height - margin.bottom;
  const right = Math.max(margin.left + 1, widthPx - margin.right);
  const all = [...stiffness, ...windows];
  const low = 0.8 * Math.min(...all.map((row) => row.lowNm2));
  const high = 1.25 * Math.max(...all.map((row) => row.highNm2));
  const x = scaleLinear([0, lengthM], [margin.left, right]);
  const y = scaleLog([low, high], [foot, margin.top]);
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
          aria-label="The fitted stiffness with its band, and the photograph’s own in steps with its ±; the table below has the figures."
        >
          {decadeLines(y.domain()).map(({ value, major }) => (
            <g key={value}>
              <path
                d={`M${margin.left} ${y(value)}H${right}`}
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
          <path d={band([...stiffness]) ?? ''} className="band" />
          <path d={curve([...stiffness]) ?? ''} className="curve" />
          {windows.map((row) => {
            const middle = x(0.5 * (row.fromTipM + row.toTipM));
            return (
              <path
                key={row.fromTipM}
                className="second-step"
                d={`M${x(row.fromTipM)} ${y(row.EINm2)}H${x(row.toTipM)}M${middle} ${y(row.lowNm2)}V${y(row.highNm2)}`}
              />
            );
          })}
          {stationTicks(lengthM, system, widthPx).map(({ fromTipM, words }) => (
            <g key={words}>
              <path d={`M${x(fromTipM)} ${foot}v6`} className="tick-mark" />
              <text x={x(fromTipM)} y={foot + 20} className="tick" textAnchor="middle">
                {words}
              </text>
            </g>
          ))}
          <text x={right} y={height - 6} className="axis-title" textAnchor="end">
            from the tip
          </text>
        </svg>
      )}
      <figcaption className="small quiet">
        Curve and band: the fit. Steps with bars: this photograph by itself, 95 %.
      </figcaption>
    </figure>
  );
}
