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

export function inspectionList(facts: RodFacts = {}): InspectionItem[] {
  const mm = (lengthM: number | undefined) =>
    lengthM === undefined ? '' : `${Math.round(lengthM * 1000)} mm `;
  const grams = facts.massKg === undefined ? '' : `${Math.round(facts.massKg * 1000)} g `;
  return [
    {
      id: 'straight',
      item: 'Sighted from the butt: sections in one line',
      tolerance: 'by eye, no step',
    },
    { id: 'guides-line', item: 'Guides and tip-top in line with the reel seat', tolerance: '± 2°' },
    { id: 'length', item: 'Length, joints seated', tolerance: `${mm(facts.lengthM)}± 5 mm` },
    { id: 'mass', item: 'Mass, ready to fish', tolerance: `${grams}± 5 g` },
    { id: 'balance', item: 'Balance point with the reel', tolerance: `${mm(facts.balanceFromButtM)}± 15 mm` },
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
