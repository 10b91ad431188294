import type { Zone } from '../../../engine/layout/guide-moves.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { SheetFrame } from './sheet-frame.ts';

/** The straight rod: what stays the same while guides move. */
export interface RulerModel {
  lengthM: number;
  /** Front of the grip. */
  gripFromTipM: number;
  system: UnitSystem;
  /** Outside diameter at some stations, for the outline. */
  diameters: readonly { fromTipM: number; outsideM: number }[];
  ferrules: readonly Zone[];
  keepOut: readonly Zone[];
  sections: readonly { name: string; visible: Zone }[];
  pinned: readonly boolean[];
  /** Stations between which each mark is as good, of the layout last settled. */
  slack: readonly Zone[] | undefined;
  startFromTipM: readonly number[];
  /** A length without its unit, as short as the tape allows: `22 1⁄8`. */
  short(lengthM: number): string;
  /** All there is to say of one guide's place and what is read there, for the screen reader. */
  describe(frame: SheetFrame, guide: number): string;
}
