import { findingsOf, reasonsOf } from '../finding.ts';

/** What a fit is given that makes no sense, or finds odd among its readings. Tests are counted from 1. */
export interface FitKinds {
  'fit/ends-order': { fromM: number; toM: number; lengthM: number };
  'fit/not-after': { fromTipM: number; beforeM: number };
  'fit/supports': { tipSideM: number; buttSideM: number };
  'fit/few-points': { points: number };
  'fit/curve-length': { curveM: number; blankM: number };
  'fit/rings': Record<string, never>;
  'fit/nothing-read': Record<string, never>;
  'fit/scatter': { times: number };
  'fit/loads-swapped': { firstKg: number; secondKg: number; first: number; second: number };
  'fit/test-left-out': { test: number };
  'fit/reading-odd': Otherwise & { quantity: 'drop' | 'sag'; readM: number; offM: number };
  'fit/curve-strays': Otherwise & { fromTipM: number; offM: number };
  'fit/balance-odd': { balanceM: number };
  'fit/mass-odd': { massKg: number };
  'fit/swings-odd': { countedHz: number; wantedHz: number };
  'fit/flag-off': Otherwise & { fromTipM: number; offM: number };
  'fit/flags-off': Otherwise & { test: number; offM: number };
  'fit/clamp-slipped': Otherwise & { test: number; tiltRad: number };
  'fit/load-odd': Otherwise & { test: number; share: number };
  'fit/edge': Otherwise & { radii: number };
  'fit/flag-check-odd': Otherwise & { fromTipM: number; missM: number };
  'fit/curve-too-long': { excessM: number };
  'fit/clamp-moved': { statedM: number; toldM: number; flags: number };
  'fit/diameter-odd': { fromTipM: number; outsideM: number; toldM: number };
  'fit/far-from-belief': { times: number; stiff: boolean };
}
/** Why the stiffness is not settled. */
export interface FitReasons {
  'fit/unsettled': { steps: number };
  'fit/no-bend': Record<string, never>;
}

/** What explains the readings almost as well, and what would tell the two apart; left out where nothing does. */
export type Otherwise = Partial<Shortly & ToTell>;

/** What may be wrong with a bench, one thing at a time. */
export type DoubtKind =
  | 'reading'
  | 'stretch'
  | 'flag'
  | 'stations'
  | 'slip'
  | 'load'
  | 'edge'
  | 'mass'
  | 'sway';

export interface Shortly {
  orKind: DoubtKind | 'flag-check';
  /** In metres, radians, radii or a share, as the kind goes. */
  orOffM: number;
  orTurnRad: number;
  orShare: number;
  orFromTipM: number;
  orTest: number;
}
export interface ToTell {
  /** `read test 2 again there`: the kind of check of either, with its test and place. */
  lookKind: LookKind;
  lookTest: number;
  lookFromTipM: number;
  elseKind: LookKind;
  elseTest: number;
  elseFromTipM: number;
}
export type LookKind = 'read' | 'flag' | 'flags' | 'slip' | 'load' | 'edge' | 'mass' | 'still';

export const fitFound = findingsOf<FitKinds>();
export const fitReason = reasonsOf<FitReasons>();
