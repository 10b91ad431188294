import { guideName } from '../../../engine/kinds/guides.ts';
import { replacedGuide } from '../../../engine/repair/replaced-guide.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { threadCalled } from '../../../words/colour-words.ts';
import { wrapName } from '../../../words/wrap-name.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import { type Build, useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useWraps } from '../../read/use-wraps.ts';
import { numberOf, textOf } from '../../read/values.ts';

/** A guide of the build on record: where it stands, its wraps, its thread. */
export function GuideHelper({ ticket }: { ticket: Build }) {
  const { rows } = useBuild();
  const { choices } = useBench();
  const { system } = useShop();
  const wraps = useWraps();
  const number = numberOf(ticket.single('damage'), 'guide');
  const guide = number === undefined ? undefined : choices?.guides[number - 1];
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 32, decimals: 1 });
  const parts = rows('parts').map((row) => ({
    what: textOf(row, 'what') ?? '',
    stage: textOf(row, 'stage'),
    lot: textOf(row, 'lot'),
    dye: textOf(row, 'dye'),
  }));
  const found =
    guide && wraps && number ? replacedGuide(number - 1, wraps.plan.wraps, wraps.choices, parts) : undefined;
  return (
    <>
      <Field path={['damage', '-', 'guide']} />
      {number !== undefined && !guide && (
        <p className="attention">
          The record has {choices?.guides.length ?? 0} guides; there is no number {number}.
        </p>
      )}
      {guide && (
        <p>
          <strong>{guideName(guide)}</strong>
          {guide.stationM === undefined ? (
            ', without a mark on record.'
          ) : (
            <>
              , its ring <Figure text={length(guide.stationM)} /> from the tip.
            </>
          )}
        </p>
      )}
      {found && (
        <>
          <p>
            Thread: <Swatch colour={found.thread.colour} /> {threadCalled(found.thread)}
            {found.thread.lot && `, lot ${found.thread.lot}`}
            {found.trim && (
              <>
                ; trim: <Swatch colour={found.trim.colour} /> {threadCalled(found.trim)}
              </>
            )}
            ; {found.threadM.toFixed(1)} m without tags.
          </p>
          {found.materials.length > 0 && (
            <ul>
              {found.materials.map(({ what, lot, dye }) => (
                <li key={what + lot + dye}>
                  {[what, lot && `lot ${lot}`, dye && `dye ${dye}`].filter(Boolean).join(', ')}
                </li>
              ))}
            </ul>
          )}
          <Table
            label="Its wraps"
            heads={['Wrap', 'Section', 'Starts, from its tip end', 'Ends', 'Turns']}
            rows={found.wraps.map((wrap) => [
              wrapName(wrap.id),
              wraps?.blank.sections[wrap.section]?.name,
              length(wrap.startFromOwnTipM),
              length(wrap.endFromOwnTipM),
              Math.round(wrap.turns),
            ])}
          />
        </>
      )}
    </>
  );
}

function Swatch({ colour }: { colour: string }) {
  return (
    <svg width="26" height="14" className="ticket-swatch" aria-hidden="true">
      <rect width="26" height="14" fill={colour} />
    </svg>
  );
}
