import { useMemo, useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { FerruleZone } from '../../../engine/bench/ferrule-zones.ts';
import type { MarksList } from '../../../engine/marks/marks-list.ts';
import { marksSheet } from '../../../sheets/marks-sheet.ts';
import { stripsSheet } from '../../../sheets/strips-sheet.ts';
import { PrinterFields, usePrinterChoice } from '../../parts/printer-choice.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useBuild } from '../../read/build-context.ts';
import { type Paper, useShop } from '../../read/shop.tsx';
import { StripsPreview } from './strips-preview.tsx';

export interface StripsPartProps {
  blank: AssembledBlank;
  list: MarksList;
  zones: readonly FerruleZone[];
}

/** Strips of paper at true size, to lay along each section; shown as they will print. */
export function StripsPart({ blank, list, zones }: StripsPartProps) {
  const { title } = useBuild();
  const shop = useShop();
  const [paper, setPaper] = useState<Paper>(shop.paper);
  const printer = usePrinterChoice(paper);
  const { print, printing } = usePrint();
  const { factors } = printer;
  const strips = useMemo(
    () => (stamp: string) => stripsSheet(blank, list, zones, { paper, factors, stamp }),
    [blank, list, zones, paper, factors],
  );
  const preview = useMemo(() => strips(`${title} · not yet printed`), [strips, title]);
  return (
    <Part title="Strips" aside={`${preview.pages.length} pages at true size`} className="screen-only">
      <div className="print-line">
        <RadioGroup className="field choice" value={paper} onChange={(value) => setPaper(value as Paper)}>
          <Label className="field-label">Paper</Label>
          <div className="choice-options">
            <Radio value="a4" className="choice-option">
              A4
            </Radio>
            <Radio value="letter" className="choice-option">
              Letter
            </Radio>
          </div>
        </RadioGroup>
        <Button
          className="button button-main"
          isDisabled={printing}
          onPress={() => print({ sheet: 'strips', paper, draw: (stamp) => [strips(stamp)] })}
        >
          Strips as PDF
        </Button>
        <Button
          className="button"
          isDisabled={printing}
          onPress={() =>
            print({ sheet: 'marks', paper, draw: (stamp) => [marksSheet(list, { paper, factors, stamp })] })
          }
        >
          List of marks as PDF
        </Button>
      </div>
      <PrinterFields paper={paper} choice={printer} />
      <StripsPreview sheet={preview} />
    </Part>
  );
}
