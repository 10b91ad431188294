import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { type DiameterRow, diameterAt } from '../../../engine/bench/diameter-profile.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Dimension } from '../../parts/drawing/dimension.tsx';
import { useShop } from '../../read/shop.tsx';
import { useWidth } from '../../read/use-width.ts';
import { SectionOutline } from './section-outline.tsx';

/** Diameters are drawn so many times as large as lengths, or a blank would be a hair. */
const thicker = 9;
const margin = { side: 14, top: 26, bottom: 76 };

/** The blank put together, tip left, to scale along its length, with its ferrules and what was measured. */
export function BlankDrawing({ blank, profile }: { blank: AssembledBlank; profile: readonly DiameterRow[] }) {
  const { ref, widthPx } = useWidth();
  const { system } = useShop();
  const show = (lengthM: number) => formatLength(lengthM, { system, decimals: 0 });
  const x = scaleLinear([0, blank.lengthM], [margin.side, Math.max(margin.side + 1, widthPx - margin.side)]);
  const pxPerM = (x(1) - x(0)) * thicker;
  const halfPx = (fromTipM: number) => Math.max(1.2, ((diameterAt(profile, fromTipM) ?? 0.004) * pxPerM) / 2);
  const axis = margin.top + halfPx(blank.lengthM) + 4;
  const height = axis + halfPx(blank.lengthM) + margin.bottom;
  const roomy = widthPx / blank.sections.length > 130;
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg
          width={widthPx}
          height={height}
          viewBox={`0 0 ${widthPx} ${height}`}
          role="img"
          aria-label={spokenDrawing(blank, show)}
        >
          <SectionNames blank={blank} x={x} inFull={roomy} />
          {roomy && (
            <SectionLengths
              blank={blank}
              x={x}
              edge={axis + 4}
              y={axis + halfPx(blank.lengthM) + 20}
              show={show}
            />
          )}
          <Dimension
            from={x(0)}
            to={x(blank.lengthM)}
            y={height - 14}
            edge={axis + 4}
            text={`${show(blank.lengthM)} put together`}
            strong
          />
          {/* Last, so that the extension lines end at the outline. */}
          {blank.sections.map((section, index) => (
            <SectionOutline key={section.id} blank={blank} index={index} x={x} axis={axis} halfPx={halfPx} />
          ))}
        </svg>
      )}
      <figcaption className="aside small">
        Lengths to scale, diameters {thicker} times as large. Hidden ends of ferrules dashed.
      </figcaption>
    </figure>
  );
}

interface OnBlank {
  blank: AssembledBlank;
  x: ScaleLinear<number, number>;
}

/** On a narrow screen the numbers alone. */
function SectionNames({ blank, x, inFull }: OnBlank & { inFull: boolean }) {
  return blank.sections.map(({ id, ends, name }, index) => (
    <text
      key={id}
      x={x((ends.fromTipM + ends.toTipM) / 2)}
      y={16}
      className="drawing-label"
      textAnchor="middle"
    >
      {inFull ? `${index + 1} ${name}` : index + 1}
    </text>
  ));
}

/** Neighbours overlap in their ferrule, so their dimensions stand at two heights. */
function SectionLengths({
  blank,
  x,
  y,
  edge,
  show,
}: OnBlank & { y: number; edge: number; show(lengthM: number): string }) {
  return blank.sections.map(({ id, ends, lengthM }, index) => (
    <Dimension
      key={id}
      from={x(ends.fromTipM)}
      to={x(ends.toTipM)}
      y={y + (index % 2) * 10}
      edge={edge}
      text={show(lengthM)}
    />
  ));
}

function spokenDrawing(blank: AssembledBlank, show: (lengthM: number) => string): string {
  const count = blank.sections.length;
  return `The blank put together: ${count} ${count === 1 ? 'section' : 'sections'}, ${show(blank.lengthM)} long. The table below has its figures.`;
}
