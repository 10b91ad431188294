import type { LearntSeries } from '../../../engine/series/learn-series.ts';
import { useWidth } from '../../read/use-width.ts';

const height = 220;
const margin = { left: 56, right: 14, top: 16, bottom: 34 };

/** Every blank of the series against their mean, and the band in which 19 of 20 lie. */
export function SeriesChart({ learnt }: { learnt: LearntSeries }) {
  const { ref, widthPx } = useWidth();
  const { shareOfLength, spread, members } = learnt;
  const shown = shareOfLength.map((_, i) => i).filter((i) => shareOfLength[i] >= 0.02);
  const most = Math.max(
    0.12,
    ...shown.flatMap((i) => [2 * spread[i], ...members.map(({ difference }) => Math.abs(difference[i]))]),
  );
  const x = (i: number) => margin.left + shareOfLength[i] * (widthPx - margin.left - margin.right);
  const y = (log: number) => margin.top + (0.5 - log / (2.2 * most)) * (height - margin.top - margin.bottom);
  const path = (of: (i: number) => number) =>
    `M${shown.map((i) => `${x(i).toFixed(1)} ${y(of(i)).toFixed(1)}`).join('L')}`;
  const band = `${path((i) => 2 * spread[i])}L${[...shown]
    .reverse()
    .map((i) => `${x(i).toFixed(1)} ${y(-2 * spread[i]).toFixed(1)}`)
    .join('L')}Z`;
  const step = most > 0.4 ? 0.25 : most > 0.2 ? 0.1 : 0.05;
  const ticks = Array.from({ length: 9 }, (_, k) => (k - 4) * step).filter(
    (log) => Math.abs(log) <= 1.05 * most,
  );
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg
          width={widthPx}
          height={height}
          role="img"
          aria-label="How the stiffness of each blank differs from the series’ mean along the blank; the table below has the figures."
        >
          {ticks.map((log) => (
            <g key={log}>
              <path
                d={`M${margin.left} ${y(Math.log(1 + log))}H${widthPx - margin.right}`}
                className={log === 0 ? 'grid-major' : 'grid-minor'}
              />
              <text x={margin.left - 8} y={y(Math.log(1 + log)) + 4} className="tick" textAnchor="end">
                {log > 0 ? '+' : log < 0 ? '−' : ''}
                {Math.abs(Math.round(log * 100))} %
              </text>
            </g>
          ))}
          <path d={band} className="band" />
          {members.map(({ id, name, difference }) => (
            <path key={id} d={path((i) => difference[i])} className="series-curve">
              <title>{name}</title>
            </path>
          ))}
          <text x={margin.left} y={height - 8} className="axis-title">
            tip
          </text>
          <text x={widthPx - margin.right} y={height - 8} className="axis-title" textAnchor="end">
            butt
          </text>
        </svg>
      )}
    </figure>
  );
}
