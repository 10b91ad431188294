import { useMemo } from 'react';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { FerruleZone } from '../../../engine/bench/ferrule-zones.ts';
import type { MarksList } from '../../../engine/marks/marks-list.ts';
import type { Sheet } from '../../../sheets/drawing.ts';
import { marksSheet } from '../../../sheets/marks-sheet.ts';
import { type StripPaper, type StripsOn, usualRollM } from '../../../sheets/paper-size.ts';
import { piecesOn, stripsOf, stripsSheet } from '../../../sheets/strips-sheet.ts';
import { pageSvg } from '../../../sheets/svg.ts';
import { Field } from '../../fields/field.tsx';
import { ShopFields } from '../../fields/shop-fields.tsx';
import { PrinterFields, usePrinterChoice } from '../../parts/printer-choice.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { siOf, textOf } from '../../read/values.ts';
import { StripsPlan } from './strips-plan.tsx';

export interface StripsPartProps {
  blank: AssembledBlank;
  list: MarksList;
  zones: readonly FerruleZone[];
}

/** Strips of paper at true size, to lay along each section; where each lies, and the pages as they print. */
export function StripsPart({ blank, list, zones }: StripsPartProps) {
  const { title } = useBuild();
  const { paper: sheet } = useShop();
  const on = useStripPaper();
  const printer = usePrinterChoice(on.paper);
  const { factors } = printer;
  const plan = stripsOf(blank, list, zones).map((strip) => ({ strip, pieces: piecesOn(strip, on) }));
  const pages = useMemo(
    () => stripsSheet(blank, list, zones, { ...on, stamp: `${title} · not yet printed` }),
    [blank, list, zones, on, title],
  );
  return (
    <Part title="Strips" aside={countWords(plan, pages.pages.length)} className="screen-only">
      <StripsPlan plan={plan} />
      <ShopFields>
        <div className="print-line">
          <Field path={['settings', '-', 'stripPaper']} usual={sheet} />
          {on.paper === 'roll' && <Field path={['settings', '-', 'rollWidth']} />}
          {on.paper === 'roll' && <Field path={['settings', '-', 'rollLength']} />}
          <PrintButton
            className="button button-main"
            isDisabled={pages.pages.length === 0}
            sheet="strips"
            paper={on.paper}
            draw={({ stamp }) => [stripsSheet(blank, list, zones, { ...on, factors, stamp })]}
          >
            Strips as PDF
          </PrintButton>
          <PrintButton sheet="marks" draw={(page) => [marksSheet(list, { ...page, factors })]}>
            List of marks as PDF
          </PrintButton>
        </div>
      </ShopFields>
      <PrinterFields paper={on.paper} choice={printer} />
      <Fold title="The pages as they print">
        <StripsPreview sheet={pages} />
      </Fold>
    </Part>
  );
}

function countWords(plan: readonly { pieces: readonly { joinAfterMm?: number }[] }[], pages: number): string {
  const pieces = plan.flatMap((one) => one.pieces);
  const joins = pieces.filter(({ joinAfterMm }) => joinAfterMm !== undefined).length;
  const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;
  return `${many(pieces.length, 'strip')}, ${many(joins, 'join')}, on ${many(pages, 'page')}`;
}

/** What the shop prints its strips on; its sheets until it chose. */
function useStripPaper(): StripsOn {
  const { settings, paper } = useShop();
  return useMemo(() => {
    const chosen = (textOf(settings, 'stripPaper') ?? paper) as StripPaper;
    if (chosen !== 'roll') return { paper: chosen };
    const widthM = siOf(settings, 'rollWidth') ?? usualRollM;
    return { paper: chosen, roll: { widthM, lengthM: siOf(settings, 'rollLength') } };
  }, [settings, paper]);
}

/** The pages as they will be printed, white as paper is. */
function StripsPreview({ sheet }: { sheet: Sheet }) {
  return (
    <div className="pages">
      {sheet.pages.map((page, index) => {
        const name = `Page ${index + 1} of ${sheet.pages.length}`;
        return (
          <figure key={name} className="page">
            <div
              role="img"
              aria-label={`${name}: ${sheet.title.toLowerCase()} at true size; the tables below hold its figures.`}
              // The engine's own drawing; it escapes every text that it sets.
              dangerouslySetInnerHTML={{ __html: pageSvg(page) }}
            />
            <figcaption className="aside small">{name}</figcaption>
          </figure>
        );
      })}
    </div>
  );
}
