import type { ScaleLinear } from 'd3-scale';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';

interface SectionOutlineProps {
  blank: AssembledBlank;
  index: number;
  x: ScaleLinear<number, number>;
  /** Height of the blank's axis, and half its thickness at a station, in px. */
  axis: number;
  halfPx(fromTipM: number): number;
}

/** One section as a tapered bar; what is hidden inside its neighbour dashed, as on any drawing. */
export function SectionOutline({ blank, index, x, axis, halfPx }: SectionOutlineProps) {
  const { ends, visible } = blank.sections[index];
  const above = blank.joints[index - 1];
  const bar = (fromM: number, toM: number, thinner = 0) => {
    const [a, b] = [halfPx(fromM) - thinner, halfPx(toM) - thinner];
    return `M${x(fromM)} ${axis - a}L${x(toM)} ${axis - b}V${axis + b}L${x(fromM)} ${axis + a}Z`;
  };
  return (
    <g>
      <path d={bar(visible.fromTipM, visible.toTipM)} className="section-bar" />
      {ends.fromTipM < visible.fromTipM && (
        <path d={bar(ends.fromTipM, visible.fromTipM, 1.4)} className="section-hidden" />
      )}
      {visible.toTipM < ends.toTipM && (
        <path d={bar(visible.toTipM, ends.toTipM, 1.4)} className="section-hidden" />
      )}
      {above?.kind === 'spigot' && (
        <path d={bar(above.doubled.fromTipM, above.doubled.toTipM, 1.8)} className="section-hidden" />
      )}
    </g>
  );
}
