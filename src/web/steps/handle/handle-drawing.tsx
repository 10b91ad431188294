import { scaleLinear } from 'd3-scale';
import { type HandlePartPlace, isSeat } from '../../../engine/kinds/handle-parts.ts';
import { Dimension } from '../../parts/drawing/dimension.tsx';
import { useWidth } from '../../read/use-width.ts';
import { type DrawnReel, HandleReel, reelRoomM } from './handle-reel.tsx';

export interface HandleDrawingProps {
  gripFrontM: number;
  reelM: number;
  reelOffsetM: number;
  /** From the butt end. */
  parts: readonly HandlePartPlace[];
  reel: DrawnReel;
  lipDiameterM?: number;
  /** The seat has a finger hold, on the side away from the reel. */
  trigger: boolean;
  show(lengthM: number): string;
}

/** The butt with the parts of its handle and the reel, to scale, butt end right as the blank runs on every other sheet. */
export function HandleDrawing(props: HandleDrawingProps) {
  const { gripFrontM, reelM, reelOffsetM, parts, reel, lipDiameterM, trigger, show } = props;
  const { ref, widthPx } = useWidth();
  const shownM = gripFrontM * (reel === 'fly' ? 1.7 : 1.25) + 0.05;
  const right = Math.min(widthPx, 760) - 16;
  const x = scaleLinear([0, shownM], [right, 16]);
  const pxPerM = (right - 16) / shownM;
  const grip = Math.max(6, 0.0125 * pxPerM);
  const room = reelRoomM(reel, reelOffsetM, lipDiameterM) * pxPerM + 8;
  const down = reel === 'multiplier' ? -1 : 1;
  const axis = down < 0 ? Math.max(46, room) : 46;
  const reelY = axis + down * reelOffsetM * pxPerM;
  const height = Math.max(axis + down * room, axis + grip + (trigger ? grip : 0)) + 64;
  const named = parts.map(({ name }) => name).join(', ');
  const spoken = `Grip from the butt end to ${show(gripFrontM)}, reel at ${show(reelM)}, its line ${show(reelOffsetM)} off the axis. From the butt end: ${named}.`;
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg width={Math.min(widthPx, 760)} height={height} role="img" aria-label={spoken}>
          <path d={`M16 ${axis}H${x(0)}`} className="handle-blank" />
          {parts.map((part) => (
            <PartShape key={part.name} part={part} x={x} axis={axis} grip={grip} hold={trigger ? -down : 0} />
          ))}
          <HandleReel
            reel={reel}
            at={{ x: x(reelM), y: reelY, axis, down, pxPerM }}
            lipDiameterM={lipDiameterM}
          />
          <circle cx={x(reelM)} cy={reelY} r={3} className="handle-leaves" />
          <Dimension
            above
            from={x(gripFrontM)}
            to={x(0)}
            y={height - 12}
            edge={axis + grip}
            text={show(gripFrontM)}
          />
          <Dimension above from={x(reelM)} to={x(0)} y={height - 36} edge={reelY} text={show(reelM)} />
        </svg>
      )}
    </figure>
  );
}

interface PartShapeProps {
  part: HandlePartPlace;
  x(fromButtM: number): number;
  axis: number;
  grip: number;
  /** Which way a finger hold points; 0: none. */
  hold: number;
}

function PartShape({ part: { name, fromButtM, toButtM }, x, axis, grip, hold }: PartShapeProps) {
  const seat = isSeat(name);
  const half = seat ? 0.7 * grip : grip;
  const [left, right] = [x(toButtM), x(fromButtM)];
  const middle = left + 0.35 * (right - left);
  return (
    <g>
      <title>{name}</title>
      <rect
        x={left}
        y={axis - half}
        width={Math.max(0, right - left)}
        height={2 * half}
        rx={seat ? 1 : grip * 0.7}
        className="handle-grip"
      />
      {seat && hold !== 0 && (
        <path
          d={`M${middle} ${axis + hold * half}q${grip * 0.2} ${hold * grip * 1.1} ${grip * 0.9} ${hold * grip}l${grip * 0.2} ${-hold * grip}z`}
          className="handle-grip"
        />
      )}
    </g>
  );
}
