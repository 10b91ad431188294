/** What is asked about the line off a fixed spool. */
import type { FixedSpool } from './fan.ts';
import type { Surface } from './surface.ts';

export interface SpoolRing {
  fromTipM: number;
  ringHeightM: number;
  insideM: number;
}
export interface SpoolRequest {
  /** Tip to the front of the grip. */
  lengthM: number;
  spool: FixedSpool;
  /** In any order, the tip-top among them where it is asked about. */
  rings: readonly SpoolRing[];
  surface: Surface;
  /** The thickest knot that must pass every ring. */
  knotM?: number;
}
