/** What the page and the scan's own worker say to each other. */
import type { Finding, Scanned } from '../../../image/index.ts';

export interface ScanTask {
  id: number;
  bytes: Uint8Array;
  /** A telephone's picture of the reference sheet, which is made flat first. */
  onSheet: boolean;
  /** Left out: as the sheet or the file says, else the scanner's usual 600. */
  dpi?: number;
}
export interface ScanRead {
  widthPx: number;
  heightPx: number;
  /** That the guides were measured with. */
  dpi: number;
  /** Written in the file by the scanner, right or wrong. */
  statedDpi?: number;
  /** The sheet made flat, to be shown instead of the picture. */
  flat?: Blob;
  scanned: Scanned;
}
export type ScanSaid =
  | { id: number; says: 'progress'; share: number }
  | { id: number; says: 'read'; read: ScanRead }
  | { id: number; says: 'refused'; findings: Finding[] };

export const usualDpi = 600;
