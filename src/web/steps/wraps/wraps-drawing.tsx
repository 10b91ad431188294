import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { WrapPlan } from '../../../engine/wraps/plan-wraps.ts';
import type { WrapChoices } from '../../../engine/wraps/wrap-choices.ts';
import { wrapName } from '../../../words/wrap-name.ts';
import { useWidth } from '../../read/use-width.ts';

interface WrapsDrawingProps {
  blank: AssembledBlank;
  plan: WrapPlan;
  choices: WrapChoices;
  /** Station, from the tip, of the signature's tip side, and its length. */
  signature: { fromTipM: number; lengthM: number } | undefined;
}

/** Every section with its wraps in their colours: true along the rod, drawn thick across it. */
export function WrapsDrawing({ blank, plan, choices, signature }: WrapsDrawingProps) {
  const { ref, widthPx } = useWidth();
  const longestM = Math.max(...blank.sections.map(({ lengthM }) => lengthM));
  const pxPerM = (widthPx - 8) / longestM;
  const spoken = `${plan.wraps.length} wraps on ${blank.sections.length} sections; their places stand in the table.`;
  return (
    <figure ref={ref} className="drawing">
      {widthPx > 0 && (
        <svg width={widthPx} height={blank.sections.length * rowPx} role="img" aria-label={spoken}>
          {blank.sections.map((section, index) => {
            const axis = index * rowPx + 40;
            const x = (fromTipM: number) => 4 + (fromTipM - section.ends.fromTipM) * pxPerM;
            return (
              <g key={section.id}>
                <text x={4} y={axis - 20} className="drawing-label">
                  {section.name}
                </text>
                <path d={`M4 ${axis}H${4 + section.lengthM * pxPerM}`} className="wraps-blank" />
                {signature && index === blank.sections.length - 1 && (
                  <rect
                    x={x(signature.fromTipM)}
                    y={axis - 8}
                    width={signature.lengthM * pxPerM}
                    height={16}
                    className="wraps-signature"
                  />
                )}
                {plan.wraps
                  .filter((wrap) => wrap.section === index)
                  .map((wrap) => {
                    const [from, to] = [x(wrap.fromTipM), x(wrap.toTipM)];
                    // Four turns are less than a pixel on a phone; a trim is to be seen.
                    const trim = wrap.trimEndM > 0 ? Math.max(2, wrap.trimEndM * pxPerM) : 0;
                    const box = { y: axis - 9, height: 18 };
                    return (
                      <g key={wrap.id}>
                        <title>{wrapName(wrap.id)}</title>
                        {wrap.underwrapM > 0 && (
                          <rect
                            x={(from + to - wrap.underwrapM * pxPerM) / 2}
                            y={axis - 6}
                            width={wrap.underwrapM * pxPerM}
                            height={12}
                            fill={choices.under.colour}
                            className="wraps-wrap"
                          />
                        )}
                        <rect
                          x={from}
                          width={Math.max(1, to - from)}
                          {...box}
                          fill={choices.thread.colour}
                          className="wraps-wrap"
                        />
                        {trim > 0 && (
                          <>
                            <rect x={from} width={trim} {...box} fill={choices.trim.colour} />
                            <rect x={to - trim} width={trim} {...box} fill={choices.trim.colour} />
                          </>
                        )}
                      </g>
                    );
                  })}
              </g>
            );
          })}
        </svg>
      )}
    </figure>
  );
}
const rowPx = 68;
