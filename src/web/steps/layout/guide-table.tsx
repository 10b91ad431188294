import { type ReactNode, useRef } from 'react';
import { criteriaIn, limitAtGuide, valueAtGuide } from '../../../engine/layout/criteria.ts';
import type { Zone } from '../../../engine/layout/guide-moves.ts';
import type { LayoutLimits } from '../../../engine/layout/ladder-request.ts';
import { criterionWords } from '../../../words/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare, slackInWords } from '../../../words/places.ts';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import { Table } from '../../parts/sheet/table.tsx';
import type { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface GuideTableProps {
  sheet: LiveSheet;
  writer: LadderWriter;
  limits: LayoutLimits;
  /** Stations between which each mark is as good. */
  slack: readonly Zone[] | undefined;
  /** Name of the load drawn. */
  loadName: string;
  /** What stands in the column of marks: the mark to press, or the field to type it. */
  mark(guide: number): ReactNode;
  pinned: readonly boolean[];
}

/** Every guide in figures under the drawn load; answers while a guide is dragged. */
export function GuideTable(props: GuideTableProps) {
  const { writer, pinned, loadName } = props;
  const judged = criteriaIn(props.limits);
  const body = useRef<HTMLTableSectionElement>(null);
  usePainted(props.sheet, (frame) => {
    if (body.current) paintRows(body.current, frame, props);
  });
  const unit = writer.units === 'inch' ? 'inches' : 'mm';
  return (
    <Table
      label="Guides in figures"
      frame="guide-table close-table"
      body={body}
      caption={
        <>
          Guides at {loadName} <span className="aside">{unit}</span>
        </>
      }
      heads={[
        'guide',
        'from tip',
        'interval',
        'may move',
        ...judged.map(({ id }) => criterionWords[id].short),
      ]}
    >
      {pinned.map((held, guide) => (
        <tr key={guide}>
          <th scope="row">
            {guide + 1}
            {held && <span className="small"> pinned</span>}
          </th>
          <td>{props.mark(guide)}</td>
          <td className="quiet" />
          <td className="quiet" />
          {judged.map(({ id }) => (
            <td key={id} />
          ))}
        </tr>
      ))}
    </Table>
  );
}

function paintRows(body: HTMLTableSectionElement, frame: SheetFrame, props: GuideTableProps): void {
  const { writer, limits, slack } = props;
  const load = frame.ours?.reading.loads[frame.drawn];
  [...body.rows].forEach((row, guide) => {
    const at = frame.fromTipM[guide];
    if (at === undefined) return;
    row.classList.toggle('active', frame.active === guide);
    const shown = row.cells[1].querySelector('[data-mark]');
    if (shown) paintFigure(shown, bare(writer.length(at)));
    const set = (cell: number, text: string, beyond = false) => {
      paintFigure(row.cells[cell], text);
      row.cells[cell].classList.toggle('attention', beyond);
    };
    set(2, bare(writer.length(at - (frame.fromTipM[guide - 1] ?? 0))));
    set(3, mayMove(slack?.[guide], at, writer));
    if (!load?.spans[guide]) return;
    criteriaIn(limits).forEach((criterion, column) => {
      const value = valueAtGuide(criterion, load, guide, limits);
      const words =
        value === undefined ? 'reel' : criterionWords[criterion.id].reading(value, load.ruled[guide], writer);
      set(4 + column, bare(words), (value ?? 0) > limitAtGuide(criterion, limits, guide, load));
    });
  });
}

/** From where the mark is now; nothing to say once it has left its slack. */
function mayMove(zone: Zone | undefined, at: number, writer: LadderWriter): string {
  if (!zone) return '…';
  const [towardsTipM, towardsButtM] = [at - zone.fromTipM, zone.toTipM - at];
  return towardsTipM < -5e-4 || towardsButtM < -5e-4
    ? 'past its slack'
    : slackInWords(Math.max(0, towardsTipM), Math.max(0, towardsButtM), writer);
}
