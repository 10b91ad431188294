import { formatInches } from '../units/format-inches.ts';
import { formatMm } from '../units/format-quantity.ts';

const inch = 0.0254;

/**
 * What is looked at before a rod leaves, with tolerances a customer would hold it to. Common practice, no source:
 * every line can be changed or struck.
 */
export interface InspectionItem {
  id: string;
  item: string;
  tolerance: string;
}
export interface RodFacts {
  lengthM?: number;
  massKg?: number;
  balanceFromButtM?: number;
}

/** Lengths in the shop's own units; what is a matter of hairs stays in millimetres. */
export function inspectionList(facts: RodFacts = {}, system: 'mm' | 'inch' = 'mm'): InspectionItem[] {
  const within = (lengthM: number | undefined, toleranceM: number) => {
    const text = (valueM: number) =>
      system === 'mm' ? formatMm(valueM, 0) : formatInches(valueM, { denominator: 8 }).text.replace('⁄', '/');
    return [lengthM === undefined ? '' : `${text(lengthM)} `, `± ${text(toleranceM)}`].join('');
  };
  const grams = facts.massKg === undefined ? '' : `${Math.round(facts.massKg * 1000)} g `;
  return [
    {
      id: 'straight',
      item: 'Sighted from the butt: sections in one line',
      tolerance: 'by eye, no step',
    },
    { id: 'guides-line', item: 'Guides and tip-top in line with the reel seat', tolerance: '± 2°' },
    {
      id: 'length',
      item: 'Length, joints seated',
      tolerance: within(facts.lengthM, system === 'mm' ? 0.005 : inch / 4),
    },
    { id: 'mass', item: 'Mass, ready to fish', tolerance: `${grams}± 5 g` },
    {
      id: 'balance',
      item: 'Balance point with the reel',
      tolerance: within(facts.balanceFromButtM, system === 'mm' ? 0.015 : (5 * inch) / 8),
    },
    {
      id: 'joints',
      item: 'Joints: seat to their marks, no play',
      tolerance: 'no click when flexed',
    },
    { id: 'wraps', item: 'Wraps of one kind equally long', tolerance: '± 0.5 mm' },
    { id: 'finish', item: 'Finish: clear, even, no fish-eyes, ends sealed', tolerance: 'no thread felt' },
    { id: 'rings', item: 'Rings: a cotton swab leaves no fibre', tolerance: 'none' },
    { id: 'seat', item: 'Reel seat: reel foot fits, hood runs, nothing turns', tolerance: 'no play' },
    { id: 'grip', item: 'Grip: no gap, no glue, winding check down', tolerance: 'no gap over 0.2 mm' },
    {
      id: 'load',
      item: 'Load test, finished: even bend, no creak',
      tolerance: 'as the Load test step says',
    },
    {
      id: 'name',
      item: 'Lettering: spelt as the customer gave it',
      tolerance: 'letter by letter',
    },
  ];
}
