import { scaleLinear } from 'd3-scale';
import { SvgFigure } from '../../fields/svg-figure.tsx';
import { useWidth } from '../../read/use-width.ts';

export interface HandleDrawingProps {
  gripFrontM: number;
  reelM: number;
  reelOffsetM: number;
  show(lengthM: number): string;
}

/** The butt with grip and reel, to scale, butt end right as the blank runs on every other sheet. */
export function HandleDrawing({ gripFrontM, reelM, reelOffsetM, show }: HandleDrawingProps) {
  const { ref, widthPx } = useWidth();
  const shownM = gripFrontM * 1.7 + 0.05;
  const right = Math.min(widthPx, 760) - 16;
  const x = scaleLinear([0, shownM], [right, 16]);
  const pxPerM = (right - 16) / shownM;
  const axis = 46;
  const grip = Math.max(6, 0.0125 * pxPerM);
  const reelY = axis + reelOffsetM * pxPerM;
  const reelRadius = Math.max(8, 0.042 * pxPerM);
  const height = Math.max(reelY + reelRadius * 1.3, axis + grip) + 64;
  const spoken = `Grip from the butt end to ${show(gripFrontM)}, reel at ${show(reelM)}, its line ${show(reelOffsetM)} off the axis.`;
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg width={Math.min(widthPx, 760)} height={height} role="img" aria-label={spoken}>
          <path d={`M16 ${axis}H${x(0)}`} className="handle-blank" />
          <path d={`M16 ${axis + 9}L${x(reelM)} ${reelY}`} className="handle-line" />
          <rect
            x={x(gripFrontM)}
            y={axis - grip}
            width={x(0) - x(gripFrontM)}
            height={2 * grip}
            rx={grip * 0.7}
            className="handle-grip"
          />
          <circle cx={x(reelM)} cy={reelY + reelRadius * 0.3} r={reelRadius} className="handle-reel" />
          <circle cx={x(reelM)} cy={reelY} r={3} className="handle-leaves" />
          <Span from={x(gripFrontM)} to={x(0)} y={height - 12} edge={axis + grip} text={show(gripFrontM)} />
          <Span from={x(reelM)} to={x(0)} y={height - 36} edge={reelY} text={show(reelM)} />
        </svg>
      )}
    </figure>
  );
}

function Span({
  from,
  to,
  y,
  edge,
  text,
}: {
  from: number;
  to: number;
  y: number;
  edge: number;
  text: string;
}) {
  return (
    <g className="dimension">
      <path d={`M${from} ${edge}V${y + 4}M${to} ${edge}V${y + 4}`} className="extension" />
      <path d={`M${from} ${y}H${to}`} />
      <path d={`M${from} ${y}l7 -2.4v4.8zM${to} ${y}l-7 -2.4v4.8z`} className="arrow" />
      <SvgFigure text={text} x={(from + to) / 2} y={y - 4} textAnchor="middle" />
    </g>
  );
}
