import {
  type InspectionPoint,
  inspectionPoints,
  inspectionTolerances,
} from '../engine/delivery/inspection.ts';
import type { ShopWriter } from './writer.ts';

interface RodFacts {
  lengthM?: number;
  massKg?: number;
  balanceFromButtM?: number;
}
interface InspectionItem {
  item: string;
  tolerance: string;
}

const looks: Record<InspectionPoint, string> = {
  straight: 'Sighted from the butt: sections in one line',
  'guides-line': 'Guides and tip-top in line with the reel seat',
  length: 'Length, joints seated',
  mass: 'Mass, ready to fish',
  balance: 'Balance point with the reel',
  joints: 'Joints: seat to their marks, no play',
  wraps: 'Wraps of one kind equally long',
  finish: 'Finish: clear, even, no fish-eyes, ends sealed',
  rings: 'Rings: a cotton swab leaves no fibre',
  seat: 'Reel seat: reel foot fits, hood runs, nothing turns',
  grip: 'Grip: no gap, no glue, winding check down',
  load: 'Load test, finished: even bend, no creak',
  name: 'Lettering: spelt as the customer gave it',
};

/** A usual point in the shop's units; the builder writes over either. Undefined where `point` is none. */
export function inspectionInWords(
  point: string | undefined,
  facts: RodFacts,
  w: ShopWriter,
): InspectionItem | undefined {
  const usual = inspectionPoints.find((one) => one === point);
  return usual && { item: looks[usual], tolerance: tolerancesInWords(facts, w)[usual] };
}

function tolerancesInWords(
  { lengthM, massKg, balanceFromButtM }: RodFacts,
  w: ShopWriter,
): Record<InspectionPoint, string> {
  const may = inspectionTolerances(w.units);
  const within = (value: number | undefined, tolerance: number, write: (value: number) => string) =>
    `${value === undefined ? 'as agreed' : write(value)} ± ${write(tolerance)}`.replaceAll('⁄', '/');
  return {
    straight: 'by eye, no step',
    'guides-line': `± ${w.lineAngle(may.guidesLineRad)}`,
    length: within(lengthM, may.lengthM, w.tick),
    mass: within(massKg, may.massKg, w.load),
    balance: within(balanceFromButtM, may.balanceM, w.tick),
    joints: 'no click when flexed',
    wraps: `± ${w.calliper(may.wrapsM)}`,
    finish: 'no thread felt',
    rings: 'none',
    seat: 'no play',
    grip: `no gap over ${w.calliper(may.gripGapM)}`,
    load: 'as the Load test step says',
    name: 'letter by letter',
  };
}
