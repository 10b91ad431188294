import { siOf } from '../../read/values.ts';
import type { SetupRows } from './reading-rows.ts';

const box = { width: 340, height: 92, level: 30, sag: 16 };
const supports = [70, 270] as const;

/** How the stretch lies: tip left, two supports, the weight between them, the thread and the sag; not to scale. */
export function SpanSketch({ rows: { setup } }: { rows: SetupRows }) {
  const [from, load, to] = ['supportTipSide', 'loadFromTip', 'supportButtSide'].map((field) =>
    siOf(setup, field),
  );
  const placed = from !== undefined && load !== undefined && to !== undefined && from < load && load < to;
  const share = placed ? Math.min(0.85, Math.max(0.15, (load - from) / (to - from))) : 0.5;
  const [left, right] = supports;
  const { level, sag } = box;
  const x = left + share * (right - left);
  return (
    <svg
      className="setup-sketch"
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label="Sketch: a stretch of the blank on two supports, the weight hung between them; the sag is read beside it, from a thread drawn taut over both supports down to the blank."
    >
      <path d={`M${left} ${level}H${right}`} className="sketch-level" />
      <path
        d={`M12 ${level - 6}L${left} ${level}Q${x} ${level + 2 * sag} ${right} ${level}L${box.width - 12} ${level - 6}`}
        className="sketch-blank"
      />
      {supports.map((at) => (
        <path key={at} d={`M${at} ${level + 2}l9 18h-18z`} className="sketch-block" />
      ))}
      <path d={`M${x} ${level}v${sag}`} className="sketch-drop" />
      <path d={`M${x} ${level + sag}v14m-6 0h12v12h-12z`} className="sketch-block" />
    </svg>
  );
}
