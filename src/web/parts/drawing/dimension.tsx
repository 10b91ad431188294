import { SvgFigure } from '../../fields/svg-figure.tsx';

interface DimensionProps {
  from: number;
  to: number;
  y: number;
  /** Where the extension lines begin. */
  edge: number;
  text: string;
  /** Where the line may be too short for a gap, its figure stands over it. */
  above?: boolean;
  strong?: boolean;
}

/** A dimension line as draughtsmen draw it: extension lines, arrowheads, the figure in a gap of the line. */
export function Dimension({ from, to, y, edge, text, above = false, strong }: DimensionProps) {
  const middle = (from + to) / 2;
  const gap = above ? 0 : text.length * 3.6 + 8;
  return (
    <g className={strong ? 'dimension dimension-strong' : 'dimension'}>
      <path d={`M${from} ${edge}V${y + 4}M${to} ${edge}V${y + 4}`} className="extension" />
      <path d={`M${from} ${y}H${middle - gap}M${middle + gap} ${y}H${to}`} />
      <path d={`M${from} ${y}l7 -2.4v4.8zM${to} ${y}l-7 -2.4v4.8z`} className="arrow" />
      <SvgFigure text={text} x={middle} y={above ? y - 4 : y + 4} textAnchor="middle" />
    </g>
  );
}
