import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { useWidth } from '../../read/use-width.ts';
import {
  type Frame,
  frameMargin,
  StationAxis,
  StiffnessAxis,
  StiffnessCurve,
  stiffnessFrame,
} from './stiffness-axes.tsx';

interface StiffnessChartProps {
  stiffness: readonly StiffnessBandRow[];
  blank: AssembledBlank;
}

/** Stiffness along the blank on a logarithmic scale, tip left, with the band that holds the truth 95 times of 100. */
export function StiffnessChart({ stiffness, blank }: StiffnessChartProps) {
  const { ref, widthPx } = useWidth();
  const frame = stiffnessFrame(stiffness, blank.lengthM, widthPx);
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg
          width={widthPx}
          height={frame.height}
          viewBox={`0 0 ${widthPx} ${frame.height}`}
          role="img"
          aria-label="Stiffness along the blank with its 95 % band; the table below has the figures."
        >
          <StiffnessAxis frame={frame} />
          <Ferrules frame={frame} blank={blank} />
          <StiffnessCurve frame={frame} rows={stiffness} />
          <StationAxis frame={frame} lengthM={blank.lengthM} />
        </svg>
      )}
    </figure>
  );
}

function Ferrules({ frame: { x, height }, blank }: { frame: Frame; blank: AssembledBlank }) {
  return blank.joints.map(({ seat, upper }) => (
    <rect
      key={upper}
      x={x(seat.fromTipM)}
      width={Math.max(2, x(seat.toTipM) - x(seat.fromTipM))}
      y={frameMargin.top}
      height={height - frameMargin.top - frameMargin.bottom}
      className="ferrule-zone"
    />
  ));
}
