import { formatOnTape } from '../../../engine/units/tape-step.ts';
import type { Strip, StripPiece } from '../../../sheets/strip-pieces.ts';
import { Figure } from '../../fields/figure.tsx';

export interface PlannedStrip {
  strip: Strip;
  pieces: readonly StripPiece[];
}

/** Each section as a bar with its strips laid along it: which end each starts from, and where they are taped. */
export function StripsPlan({ plan }: { plan: readonly PlannedStrip[] }) {
  const longestM = Math.max(...plan.map(({ strip }) => strip.section.lengthM));
  return (
    <ul className="strips-plan">
      {plan.map(({ strip, pieces }) => (
        <li key={strip.section.id}>
          <span className="strips-plan-name">
            {strip.section.name}{' '}
            <span className="quiet">
              <Figure text={formatOnTape(strip.section.lengthM, strip.tapeStep)} />
            </span>
          </span>
          {pieces.length === 0 ? (
            <span className="quiet"> · no guide, so no strip</span>
          ) : (
            <SectionPlan strip={strip} pieces={pieces} share={strip.section.lengthM / longestM} />
          )}
        </li>
      ))}
    </ul>
  );
}

const axisPx = 44;
const paperPx = { top: 20, height: 20 } as const;

/** Places are shares of the section, so that figures keep their size at every width. */
function SectionPlan({ strip, pieces, share }: PlannedStrip & { share: number }) {
  const { section, zones } = strip;
  const at = (alongM: number) => `${((alongM / section.lengthM) * 100).toFixed(3)}%`;
  const across = (fromM: number, toM: number) => ({ x: at(fromM), width: at(toM - fromM) });
  return (
    <svg
      className="strips-plan-drawing"
      role="img"
      aria-label={inWords(strip, pieces)}
      width={`${share * 100}%`}
      height="54"
    >
      <rect className="plan-blank" x="0" width="100%" y={axisPx} height="5" />
      {zones.map((zone) => (
        <rect
          key={`${zone.fromOwnTipM}`}
          className="plan-closed"
          {...across(zone.fromOwnTipM, zone.toOwnTipM)}
          y={axisPx}
          height="5"
        />
      ))}
      {pieces.map(({ startMm, endMm, index }) => (
        <rect
          key={index}
          className="plan-paper"
          {...across(startMm / 1000, endMm / 1000)}
          y={paperPx.top}
          height={paperPx.height}
        />
      ))}
      {pieces.map(({ joinAfterMm, index }) =>
        joinAfterMm === undefined ? null : (
          <line
            key={index}
            className="plan-join"
            x1={at(joinAfterMm / 1000)}
            x2={at(joinAfterMm / 1000)}
            y1={paperPx.top - 3}
            y2={paperPx.top + paperPx.height + 3}
          />
        ),
      )}
      {section.rows.map(({ guide, fromOwnTipM }) => (
        <g key={guide}>
          <line className="plan-mark" x1={at(fromOwnTipM)} x2={at(fromOwnTipM)} y1="16" y2={axisPx + 5} />
          <text x={at(fromOwnTipM)} y="12" textAnchor="middle">
            {guide}
          </text>
        </g>
      ))}
    </svg>
  );
}

function inWords({ section }: Strip, pieces: readonly StripPiece[]): string {
  const joins = pieces.filter(({ joinAfterMm }) => joinAfterMm !== undefined).length;
  const guides = section.rows.map(({ guide }) => guide).join(', ');
  return `${section.name}: ${pieces.length} strips, ${joins} joins, for guides ${guides}`;
}
