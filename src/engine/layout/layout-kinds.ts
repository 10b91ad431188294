import { findingsOf } from '../finding.ts';

/** What can be wrong with what a layout is asked for, or odd about its start and its answer. */
export interface LayoutKinds {
  'layout/no-usual-loads': { lengthM: number };
  'layout/stripping-place': { strippingM: number; firstM: number; clampM: number };
  'layout/guides-need-room': { count: number; needM: number; roomM: number };
  'layout/held-twice': { guide: number; fromTipM: number; otherM: number };
  'layout/held-too-close': {
    guide: number;
    fromTipM: number;
    next: number;
    nextM: number;
    needM: number;
  };
  'layout/held-in-zone': Zone & { guide: number; fromTipM: number; tipSideM: number; buttSideM: number };
  'layout/zone-ends': Zone;
  'layout/no-load': Nothing;
  'layout/load-senseless': { tensionN: number; tiedN: number; directionRad: number };
  'layout/start-order': { guide: number; fromTipM: number; lengthM: number };
  'layout/start-held': { guide: number; fromTipM: number; heldM: number };
  'layout/start-in-zone': Zone & { guide: number; fromTipM: number };
  'layout/start-too-near': { guide: number; fromTipM: number; intervalM: number };
  'layout/start-shrinks': { guide: number; intervalM: number; beforeM: number };
  'layout/held-leave-no-room': { count: number };
  'layout/held-cannot-grow': Nothing;
  'layout/no-clear-place': { count: number; freeHelps: boolean };
  'layout/worst-between-held': { guide: number };
  'layout/search-cut-short': Nothing;
  'layout/free-beyond-blank': { freeM: number; lengthM: number };
  'layout/start-stays-unread': Nothing;
  /** Blanks on which other marks are better, worse by over 3 %; of 100, on how many they would have to be better. */
  'layout/start-stays': { better: number; worse: number; of: number; wanted: number; oneHold: boolean };
}
interface Zone {
  zoneFromM: number;
  zoneToM: number;
}
type Nothing = Record<string, never>;

export const layoutFound = findingsOf<LayoutKinds>();
