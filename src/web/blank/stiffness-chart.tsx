import { scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { AssembledBlank } from '../../engine/bench/assemble.ts';
import type { StiffnessBandRow } from '../../engine/stiffness/request.ts';
import type { UnitSystem } from '../../engine/units/unit-table.ts';
import { useShop } from '../read/shop.tsx';
import { useWidth } from '../read/use-width.ts';

export interface StiffnessChartProps {
  stiffness: readonly StiffnessBandRow[];
  blank: AssembledBlank;
}

const margin = { left: 56, right: 14, top: 28, bottom: 44 };

/** Stiffness along the blank on a logarithmic scale, tip left, with the band that holds the truth 95 times of 100. */
export function StiffnessChart({ stiffness, blank }: StiffnessChartProps) {
  const { ref, widthPx } = useWidth();
  const { system } = useShop();
  const height = Math.round(Math.min(380, Math.max(240, widthPx * 0.36)));
  const x = scaleLinear([0, blank.lengthM], [margin.left, Math.max(margin.left + 1, widthPx - margin.right)]);
  const y = scaleLog(
    [
      0.8 * Math.min(...stiffness.map((row) => row.lowNm2)),
      1.25 * Math.max(...stiffness.map((row) => row.highNm2)),
    ],
    [height - margin.bottom, margin.top],
  );
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
          {decades(y.domain()).map(({ value, major }) => (
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
          {blank.joints.map(({ seat, upper }) => (
            <rect
              key={upper}
              x={x(seat.fromTipM)}
              width={Math.max(2, x(seat.toTipM) - x(seat.fromTipM))}
              y={margin.top}
              height={height - margin.top - margin.bottom}
              className="ferrule-zone"
            />
          ))}
          <path d={band([...stiffness]) ?? ''} className="band" />
          <path d={curve([...stiffness]) ?? ''} className="curve" />
          {stationTicks(blank.lengthM, system, widthPx).map(({ fromTipM, words }) => (
            <g key={words}>
              <path d={`M${x(fromTipM)} ${height - margin.bottom}v6`} className="tick-mark" />
              <text x={x(fromTipM)} y={height - margin.bottom + 20} className="tick" textAnchor="middle">
                {words}
              </text>
            </g>
          ))}
          <text x={margin.left - 40} y={14} className="axis-title">
            EI in N·m²
          </text>
          <text x={widthPx - margin.right} y={height - 6} className="axis-title" textAnchor="end">
            from the tip
          </text>
        </svg>
      )}
    </figure>
  );
}

/** 1, 2, … 9 of every decade inside the domain; the ones, twos and fives carry a number. */
function decades([low, high]: number[]): { value: number; major: boolean }[] {
  const first = Math.floor(Math.log10(low));
  const last = Math.ceil(Math.log10(high));
  const few = high / low > 60 ? [1] : [1, 2, 5];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .flatMap((power) =>
      [1, 2, 3, 4, 5, 6, 7, 8, 9].map((digit) => ({
        value: Number((digit * 10 ** power).toPrecision(1)),
        major: few.includes(digit),
      })),
    )
    .filter(({ value }) => value >= low * 0.999 && value <= high * 1.001);
}

/** Feet in an inch shop, quarters of a metre otherwise; fewer where they would touch. */
export function stationTicks(lengthM: number, system: UnitSystem, widthPx: number) {
  const unit = system === 'inch' ? 0.3048 : 0.25;
  const step = unit * (widthPx / (lengthM / unit) < 44 ? 2 : 1);
  return Array.from({ length: Math.floor(lengthM / step + 1e-9) + 1 }, (_, index) => {
    const fromTipM = index * step;
    const words =
      system === 'inch' ? `${Math.round(fromTipM / 0.3048)} ft` : `${Math.round(fromTipM * 1000)}`;
    return { fromTipM, words: system === 'mm' && index === 0 ? '0 mm' : words };
  });
}
