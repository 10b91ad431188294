import type { TwistReading } from '../engine/torsion/torsion-test.ts';
import type { Writer } from '../words/writer.ts';
import { type Sheet } from './drawing.ts';
import { type PaperName } from './paper-size.ts';
export interface TwistSheetOptions {
  paper: PaperName;
  stamp: string;
  writer: Writer;
}
/** Weights and arms as they stand in the record; the angles are for the bench. */
export interface TwistOnPaper {
  barFromTipM?: number;
  clampFromTipM?: number;
  weights: readonly Partial<Pick<TwistReading, 'massKg' | 'armM'>>[];
}
/** The bar across the blank: how it stands, the steps, and boxes for the angles. */
export declare function twistSheet(twist: TwistOnPaper, { paper, stamp, writer }: TwistSheetOptions): Sheet;
