import type { RealLineAtLoad } from '../../../engine/layout/real-line.ts';
import { behindLastWords, contactRows, touchedWords } from '../../../words/contact-rows.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';

interface ContactTableProps {
  loads: readonly RealLineAtLoad[];
  /** The marks that were read. */
  fromTipM: readonly number[];
  writer: LadderWriter;
}

/** Guides on top: where the line lies on the blank, and how far apart two guides there may stand without. */
export function ContactTable({ loads, fromTipM, writer }: ContactTableProps) {
  const rows = contactRows(loads, fromTipM);
  return (
    <>
      <p>
        <Figure text={`${touchedWords(rows, writer)} ${behindLastWords(loads, writer)}`.trim()} />
      </p>
      <Table
        label="Line on the blank in figures"
        frame="close-table"
        caption={
          <>
            Line on the blank <span className="aside">{writer.units === 'inch' ? 'inches' : 'mm'}</span>
          </>
        }
        note={
          <p className="small quiet">
            Clear up to: how far away the next guide toward the butt may be before the line touches the blank.
            At the load where that is least; for this bend and these ring heights.
          </p>
        }
        heads={['span', 'interval', 'clear up to', 'lies on the blank at']}
        rows={rows.map(({ span, intervalM, clearM, clearAtLoad, touching }) => [
          span === 0 ? 'tip-top to 1' : `${span} to ${span + 1}`,
          bare(writer.length(intervalM)),
          {
            of: Number.isFinite(clearM)
              ? `${bare(writer.length(clearM))} at ${writer.loads[clearAtLoad]}`
              : 'no bend found',
            className: touching.length > 0 ? 'attention' : undefined,
          },
          touching.length === 0 ? 'no load' : touching.map((load) => writer.loads[load]).join(', '),
        ])}
      />
    </>
  );
}
