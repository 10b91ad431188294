import { scaleLinear } from 'd3-scale';
import { type HandlePartPlace, isSeat } from '../../../engine/kinds/handle-parts.ts';
import { SvgFigure } from '../../fields/svg-figure.tsx';
import { useWidth } from '../../read/use-width.ts';

export interface HandleDrawingProps {
  gripFrontM: number;
  reelM: number;
  reelOffsetM: number;
  /** From the butt end. */
  parts: readonly HandlePartPlace[];
  /** The reel stands on top of the blank. */
  reelOver: boolean;
  show(lengthM: number): string;
}

/** The butt with the parts of its handle and the reel, to scale, butt end right as the blank runs on every other sheet. */
export function HandleDrawing({ gripFrontM, reelM, reelOffsetM, parts, reelOver, show }: HandleDrawingProps) {
  const { ref, widthPx } = useWidth();
  const shownM = gripFrontM * 1.7 + 0.05;
  const right = Math.min(widthPx, 760) - 16;
  const x = scaleLinear([0, shownM], [right, 16]);
  const pxPerM = (right - 16) / shownM;
  const grip = Math.max(6, 0.0125 * pxPerM);
  const reelRadius = Math.max(8, 0.042 * pxPerM);
  const reelRoom = reelOffsetM * pxPerM + reelRadius * 1.3;
  const down = reelOver ? -1 : 1;
  const axis = reelOver ? Math.max(46, reelRoom + 8) : 46;
  const reelY = axis + down * reelOffsetM * pxPerM;
  const height = Math.max(axis + down * reelRoom, axis + grip) + 64;
  const spoken = `Grip from the butt end to ${show(gripFrontM)}, reel at ${show(reelM)}, its line ${show(reelOffsetM)} off the axis.`;
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg width={Math.min(widthPx, 760)} height={height} role="img" aria-label={spoken}>
          <path d={`M16 ${axis}H${x(0)}`} className="handle-blank" />
          <path d={`M16 ${axis + down * 9}L${x(reelM)} ${reelY}`} className="handle-line" />
          {parts.map(({ name, fromButtM, toButtM }) => {
            const half = isSeat(name) ? 0.7 * grip : grip;
            return (
              <rect
                key={name}
                x={x(toButtM)}
                y={axis - half}
                width={x(fromButtM) - x(toButtM)}
                height={2 * half}
                rx={isSeat(name) ? 1 : grip * 0.7}
                className="handle-grip"
              >
                <title>{name}</title>
              </rect>
            );
          })}
          <circle cx={x(reelM)} cy={reelY + down * reelRadius * 0.3} r={reelRadius} className="handle-reel" />
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
