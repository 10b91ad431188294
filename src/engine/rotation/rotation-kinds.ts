import { findingsOf, reasonsOf } from '../finding.ts';

/** What can be odd about a section read turn by turn. */
export interface RotationKinds {
  'rotation/loads-equal': { massKg: number };
  'rotation/few-directions': { directions: number };
  'rotation/turns-bunched': { turns: number };
  'rotation/circle-uncovered': { quantity: 'bow' | 'stiffness' };
  'rotation/scatter': { scatterM: number; statedM: number };
  'rotation/loads-alike': { apartM: number };
  'rotation/odd-reading': { dropM: number; offM: number };
  'rotation/second-load-unsaid': Record<string, never>;
}

/** Why bow and stiffness are not settled. */
export interface RotationReasons {
  'rotation/unsettled': { steps: number };
}

export const rotationFound = findingsOf<RotationKinds>();
export const rotationReason = reasonsOf<RotationReasons>();
