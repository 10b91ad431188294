import { findingsOf, reasonsOf } from '../finding.ts';

/** Why frequencies cannot be had. */
export interface FrequencyKinds {
  'frequency/no-mass': Record<string, never>;
  'frequency/few-masses': { modes: number; masses: number };
}

/** Why not all of them are good. */
export interface FrequencyReasons {
  'frequency/beyond-rounding': { mode: number; times: number; modes: number };
  'frequency/still-moving': { change: number; steps: number };
}

export const frequencyFound = findingsOf<FrequencyKinds>();
export const frequencyReason = reasonsOf<FrequencyReasons>();
