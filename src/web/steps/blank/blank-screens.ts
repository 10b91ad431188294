import type { Screen } from '../../parts/sheet/screens.tsx';
import { stepName } from '../../parts/sheet/steps.ts';

export const sections = { id: 'sections', name: 'Sections' };
export const readings = { id: 'readings', name: 'Readings' };
export const stiffness = { id: 'stiffness', name: 'Stiffness' };
export const spine = { id: 'spine', name: stepName('blank/spine') };
export const swing = { id: 'swing', name: 'Swing' };
export const screens = [sections, readings, stiffness, spine, swing];

/** On which screen a field of the record is filled in. */
export function screenOf(at: string): Screen {
  // what waits for bound ferrules stands beside its weight
  if (/^(blank\/-\/ferrulesBound|readings|setups|tests|flagChecks|stands|loadTests)/.test(at))
    return readings;
  if (/^turn|lineSide/.test(at)) return spine;
  if (/^twist|twistShare$/.test(at)) return stiffness;
  return at.startsWith('swings') ? swing : sections;
}
