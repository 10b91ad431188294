import { scaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';
import { type ShapePoint, shapeAt } from '../../../engine/flow/expected-reading.ts';

/** Of the drawing, in its own px. */
export const setupFigureBox = { width: 720, height: 300, side: 46, top: 56 };
/** For a telephone, whose letters would shrink with the drawing. */
export const narrowFigureBox = { width: 400, height: 300, side: 40, top: 60 };

interface SetupFigureProps {
  shape: readonly ShapePoint[];
  flagsM?: readonly number[];
  /** The flag to read now; undefined at the clamp. */
  flagM?: number;
  flagName?: string;
  /** What is read now lies where the blank leaves the clamp. */
  atClamp?: boolean;
  /** Where the clamp holds, in words. */
  clampPlace?: string;
  /** Empty: nothing hangs. */
  weight: string;
  box?: typeof setupFigureBox;
  /** What is to be seen, for the screen reader. */
  label: string;
  /** Drawn under the blank. */
  children?: ReactNode;
}

/** The set-up to scale: clamp right, tip left, flags, the weight, and the one drop that is read now. */
export function SetupFigure(props: SetupFigureProps) {
  const { shape, flagsM = [], flagM, flagName = '', atClamp, clampPlace, weight, label, children } = props;
  const { box = setupFigureBox } = props;
  const reach = Math.max(...shape.map(({ alongM }) => alongM));
  const lowest = Math.max(0.12 * reach, ...shape.map(({ dropM }) => dropM));
  const pxPerM = Math.min((box.width - 2 * box.side - 40) / reach, (box.height - box.top - 60) / lowest);
  const x = scaleLinear([0, 1], [box.width - box.side - 40, box.width - box.side - 40 - pxPerM]);
  const y = (dropM: number) => box.top + dropM * pxPerM;
  const curve = shape.map(({ alongM, dropM }) => `${x(alongM).toFixed(1)},${y(dropM).toFixed(1)}`).join(' ');
  const [tip, clampX] = [shape[0], x(0)];
  const now = flagM === undefined ? undefined : shapeAt(shape, flagM);
  return (
    <svg className="setup-figure" viewBox={`0 0 ${box.width} ${box.height}`} role="img" aria-label={label}>
      {children}
      <path d={`M${x(tip.alongM) - 20} ${box.top}H${clampX}`} className="sketch-level" />
      {/* at the clamp: the tip's flag and dimension would cover it */}
      <text x={clampX - 8} y={box.top - 8} textAnchor="end" className="sketch-word">
        level line
      </text>
      <polyline points={curve} className="sketch-blank" />
      <path d={`M${clampX} ${box.top}H${box.width}`} className="sketch-blank" />
      <path
        d={`M${clampX} ${box.top - 22}h34v16h-34zM${clampX} ${box.top + 6}h34v16h-34z`}
        className="sketch-clamp"
      />
      <text
        x={box.width - 8}
        y={box.top - 30}
        textAnchor="end"
        className={clampPlace ? 'sketch-word sketch-place' : 'sketch-word'}
      >
        {clampPlace ? `clamp ${clampPlace.replaceAll('⁄', '/')}` : 'clamp'}
      </text>
      {flagsM.map((at) => {
        const place = shapeAt(shape, at);
        return <Flag key={at} x={x(place.alongM)} y={y(place.dropM)} isNow={at === flagM} />;
      })}
      {weight !== '' && (
        <g>
          <path d={`M${x(tip.alongM)} ${y(tip.dropM)}v16m-14 0h28l6 26h-40z`} className="sketch-weight" />
          <text x={x(tip.alongM)} y={y(tip.dropM) + 35} textAnchor="middle" className="sketch-weight-name">
            {weight}
          </text>
        </g>
      )}
      {atClamp && (
        <g className="sketch-now">
          <circle cx={clampX} cy={box.top} r={13} />
        </g>
      )}
      {now && (
        <g className="sketch-now">
          <path
            d={`M${x(now.alongM)} ${box.top}V${y(now.readM)}m-9 0h18M${x(now.alongM) - 9} ${box.top}h18`}
          />
          <circle cx={x(now.alongM)} cy={y(now.dropM)} r={13} />
          <text x={x(now.alongM)} y={box.top - 26} textAnchor="middle">
            {flagName.replaceAll('⁄', '/')}
          </text>
        </g>
      )}
    </svg>
  );
}

function Flag({ x, y, isNow }: { x: number; y: number; isNow: boolean }) {
  return <path d={`M${x} ${y}v-17l13 5l-13 5`} className={isNow ? 'sketch-flag now' : 'sketch-flag'} />;
}
