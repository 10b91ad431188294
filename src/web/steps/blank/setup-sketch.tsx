import { scaleLinear } from 'd3-scale';
import { useBuild } from '../../read/build-context.ts';
import { siOf } from '../../read/values.ts';
import { flagsOf, type SetupRows } from './reading-rows.ts';

const box = { width: 340, height: 104, side: 12 };

/** How the blank lies: blocks right, tip left, flags, the weight, the drop that is read; not to scale in height. */
export function SetupSketch({ rows }: { rows: SetupRows }) {
  const { rows: allRows } = useBuild();
  const clampM = siOf(rows.setup, 'clampFromTip');
  if (clampM === undefined) return null;
  const sectionsM = allRows('sections').reduce((sum, row) => sum + (siOf(row, 'length') ?? 0), 0);
  const x = scaleLinear([0, Math.max(sectionsM, clampM * 1.05)], [box.side, box.width - box.side]);
  const level = 26;
  const droop = (fromTipM: number) => level + 44 * Math.max(0, 1 - fromTipM / clampM) ** 1.7;
  const steps = Array.from({ length: 25 }, (_, index) => (clampM * index) / 24);
  const curve = steps.map((at) => `${x(at).toFixed(1)},${droop(at).toFixed(1)}`).join(' ');
  return (
    <svg
      className="setup-sketch"
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label="Sketch: the blank held level in two blocks at the butt side, flags along it, the weight at the tip; each drop is read from the level line down to the blank."
    >
      <path d={`M${x(0)} ${level}H${x(clampM)}`} className="sketch-level" />
      <polyline points={curve} className="sketch-blank" />
      <path d={`M${x(clampM)} ${level}H${box.width - box.side}`} className="sketch-blank" />
      <path
        d={`M${x(clampM)} ${level - 9}h9v18h-9zM${Math.min(x(clampM) + 20, box.width - 22)} ${level - 9}h9v18h-9z`}
        className="sketch-block"
      />
      {flagsOf(rows).map((flag) => (
        <g key={flag}>
          <path d={`M${x(flag)} ${level}V${droop(flag)}`} className="sketch-drop" />
          <circle cx={x(flag)} cy={droop(flag)} r={2.6} className="sketch-flag" />
        </g>
      ))}
      <path d={`M${x(0)} ${droop(0)}v12m-5 0h10v10h-10z`} className="sketch-block" />
    </svg>
  );
}
