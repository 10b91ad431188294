import { reasonsOf } from '../finding.ts';

/** Why no bend was found for the whole load; percents are of that load, rings count from the tip. */
export interface BendKinds {
  'bend/line-closes': { reachedPercent: number; ring: number; isLast: boolean };
  'bend/snaps': { reachedPercent: number };
  'bend/lost': { reachedPercent: number; steps: number };
  'bend/friction-unsettled': Record<string, never>;
  'bend/contact-unsettled': Record<string, never>;
}

export const bendReason = reasonsOf<BendKinds>();
