import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { formatOnTape, type TapeStep } from '../../../engine/units/tape-step.ts';
import type { Wrap } from '../../../engine/wraps/plan-wraps.ts';
import { roundWrapName } from '../../../words/wrap-name.ts';
import { Figure } from '../../fields/figure.tsx';
import { SectionCaption } from '../../parts/sheet/section-caption.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

interface WrapsTableProps {
  blank: AssembledBlank;
  wraps: readonly Wrap[];
  /** Where each guide stands round the blank, from the tip down. */
  round?: readonly (string | undefined)[];
  step: TapeStep;
}

/** Where each wrap starts and ends, from its section's own ends, so that it can be taped. */
export function WrapsTable({ blank, wraps, round, step }: WrapsTableProps) {
  const { writer } = useShop();
  return (
    <>
      {blank.sections.map((section, index) => (
        <Table
          key={section.id}
          label={`Wraps of ${section.name}`}
          className="wraps-table stacked"
          caption={<SectionCaption section={section} index={index} step={step} />}
          heads={[
            'Wrap',
            'Starts, from its tip end',
            'Ends',
            'Starts, from its butt end',
            'Length',
            'Turns',
            'Thread',
          ]}
        >
          {wraps
            .filter((wrap) => wrap.section === index)
            .map((wrap) => (
              <tr key={wrap.id}>
                <th scope="row">{roundWrapName(wrap.id, round)}</th>
                <td data-label="Starts, from its tip end">
                  <Figure text={formatOnTape(wrap.startFromOwnTipM, step)} />
                </td>
                <td data-label="Ends">
                  <Figure text={formatOnTape(wrap.endFromOwnTipM, step)} />
                </td>
                <td data-label="Starts, from its butt end">
                  <Figure text={formatOnTape(wrap.startFromOwnButtM, step)} />
                </td>
                <td data-label="Length">
                  <Figure text={writer.fine(wrap.toTipM - wrap.fromTipM)} />
                </td>
                <td data-label="Turns">{Math.round(wrap.turns)}</td>
                <td data-label="Thread">
                  <Figure text={writer.run(wrap.threadM + wrap.trimThreadM)} />
                </td>
              </tr>
            ))}
        </Table>
      ))}
    </>
  );
}
