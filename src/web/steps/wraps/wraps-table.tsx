import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { formatOnTape, type TapeStep } from '../../../engine/units/tape-step.ts';
import type { Wrap } from '../../../engine/wraps/plan-wraps.ts';
import { roundWrapName } from '../../../words/wrap-name.ts';
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
          rows={wraps
            .filter((wrap) => wrap.section === index)
            .map((wrap) => [
              roundWrapName(wrap.id, round),
              formatOnTape(wrap.startFromOwnTipM, step),
              formatOnTape(wrap.endFromOwnTipM, step),
              formatOnTape(wrap.startFromOwnButtM, step),
              writer.fine(wrap.toTipM - wrap.fromTipM),
              Math.round(wrap.turns),
              writer.run(wrap.threadM + wrap.trimThreadM),
            ])}
        />
      ))}
    </>
  );
}
