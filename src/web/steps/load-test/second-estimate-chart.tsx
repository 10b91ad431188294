import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import type { WindowEstimate } from '../../../engine/stiffness/second-estimate.ts';
import {
  StationAxis,
  StiffnessAxis,
  StiffnessCurve,
  stiffnessFrame,
} from '../../parts/charts/stiffness-axes.tsx';
import { useWidth } from '../../read/use-width.ts';
import '../../style/blank.css';

/** The fit's band and curve, and over them every window's own stiffness with its ± as a bar. */
export function SecondEstimateChart(props: {
  stiffness: readonly StiffnessBandRow[];
  windows: readonly WindowEstimate[];
  lengthM: number;
}) {
  const { stiffness, windows, lengthM } = props;
  const { ref, widthPx } = useWidth();
  const frame = stiffnessFrame([...stiffness, ...windows], lengthM, widthPx);
  const { x, y, height } = frame;
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
          <StiffnessAxis frame={frame} />
          <StiffnessCurve frame={frame} rows={stiffness} />
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
          <StationAxis frame={frame} lengthM={lengthM} />
        </svg>
      )}
      <figcaption className="small quiet">
        Curve and band: the fit. Steps with bars: this photograph by itself, 95 %.
      </figcaption>
    </figure>
  );
}
