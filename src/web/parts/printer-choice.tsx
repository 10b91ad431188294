import { useState } from 'react';
import { Button } from 'react-aria-components';
import { rowChanges } from '../../record/operation.ts';
import { nameOfRow } from '../../record/row-names.ts';
import type { StripPaper } from '../../sheets/paper-size.ts';
import { type PrintFactors, printCorrection, truePrint } from '../../sheets/print-correction.ts';
import { printedRuleWords } from '../../words/printed-rule.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { siWriter } from '../../words/writer.ts';
import { Field } from '../fields/field.tsx';
import { Figure } from '../fields/figure.tsx';
import { ShopFields } from '../fields/shop-fields.tsx';
import { useShop } from '../read/shop.tsx';
import { siOf, textOf } from '../read/values.ts';

interface PrinterChoice {
  factors: PrintFactors;
  /** Why the printer's rules cannot be used. */
  trouble: string | undefined;
  /** Row of the printer; undefined: none chosen, no correction. */
  id: string | undefined;
  choose(id: string | undefined): void;
}

/** Which printer the strips go to, and what it makes of a rule. */
export function usePrinterChoice(paper: StripPaper): PrinterChoice {
  const { printers } = useShop();
  const [chosen, setChosen] = useState<string>();
  const usable = printers.filter((row) => textOf(row, 'paper') === paper);
  const row = usable.find(({ id }) => id === chosen) ?? usable[0];
  const none = { factors: truePrint, trouble: undefined, id: row?.id, choose: setChosen };
  if (!row) return none;
  const correction = printCorrection({ acrossM: siOf(row, 'ruleAcross'), alongM: siOf(row, 'ruleAlong') });
  if (correction.ok) return { ...none, factors: correction.factors };
  return { ...none, trouble: correction.findings[0] && sentenceOf(correction.findings[0], siWriter) };
}

/** After the print: what its rules measured, kept for this printer and paper. */
export function PrinterFields({ paper, choice }: { paper: StripPaper; choice: PrinterChoice }) {
  const { printers, write, newRowId, system } = useShop();
  const usable = printers.filter((row) => textOf(row, 'paper') === paper);
  const add = () => {
    const id = newRowId();
    write('addPrinter', rowChanges('printers', id, { order: printers.length, paper }));
    choice.choose(id);
  };
  if (choice.id === undefined) {
    return (
      <div className="printer">
        <p>
          <Figure
            text={`${printedRuleWords(system)} If not, say what they measured, and the next print is corrected.`}
          />
        </p>
        <Button className="button" onPress={add}>
          Type in what they measured
        </Button>
      </div>
    );
  }
  return (
    <ShopFields>
      <div className="printer fields-row">
        <label className="field">
          <span className="field-label">Printer</span>
          <select
            className="field-input"
            value={choice.id}
            onChange={(event) => choice.choose(event.target.value)}
          >
            {usable.map((row) => (
              <option key={row.id} value={row.id}>
                {nameOfRow('printers', row) ?? 'unnamed'}
              </option>
            ))}
          </select>
        </label>
        <Field path={['printers', choice.id, 'ruleAcross']} />
        <Field path={['printers', choice.id, 'ruleAlong']} />
        <Button className="plain" onPress={add}>
          Another printer
        </Button>
      </div>
      <p role="status" className={choice.trouble ? 'attention' : 'quiet'}>
        {choice.trouble ?? correctionWords(choice.factors)}
      </p>
    </ShopFields>
  );
}

function correctionWords({ across, along }: PrintFactors): string {
  if (across === 1 && along === 1) return 'No correction: the rules were right, or not yet measured.';
  const percent = (factor: number) =>
    `${factor >= 1 ? '+' : '−'}${Math.abs((factor - 1) * 100).toFixed(2)} %`;
  return `The next print is corrected by ${percent(across)} across and ${percent(along)} along. Measure its rules again to be sure.`;
}
