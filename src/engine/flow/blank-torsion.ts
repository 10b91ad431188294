/** How stiff a build's blank is in twist: measured with a bar, stated by the builder, or its material's usual share of EI. */
import type { Bench } from '../bench/bench.ts';
import type { BlankTables } from '../bench/free-rod.ts';
import type { Finding } from '../finding.ts';
import { torsionRange } from '../torsion/torsion-ratio.ts';
import { measureTorsion, type TwistTest } from '../torsion/torsion-test.ts';

export interface BlankTorsion {
  /** GJ/EI, and what it may be. */
  share: number;
  low: number;
  high: number;
  by: 'measured' | 'stated' | 'material';
  /** What is odd about the readings, at the record's paths. */
  findings: Finding[];
}

/** `tables` of the whole blank; a fitted one brings its band. */
export function blankTorsion(
  { material, twist, sections, handle }: Pick<Bench, 'material' | 'twist' | 'sections' | 'handle'>,
  { stiffness }: Pick<BlankTables, 'stiffness'>,
  lengthM: number,
): BlankTorsion {
  const test = sections.length > 0 ? twist?.test : undefined;
  const answer =
    test &&
    measureTorsion({
      stiffness: stiffness as TwistTest['stiffness'],
      barFromTipM: test.barFromTipM,
      clampFromTipM: test.clampFromTipM ?? lengthM - handle.gripFrontFromButtM,
      readings: test.readings,
    });
  const findings = (answer?.findings ?? []).map((found) => ({
    ...found,
    path: found.path.replace(/^readings(?:\[(\d+)\])?/, (_, row?: string) =>
      row === undefined ? 'twistTest/-/barFromTip' : `twists/${test?.readings[Number(row)].id}/left`,
    ),
  }));
  if (answer?.measured) {
    const { ratio, low, high } = answer.measured;
    return { share: ratio, low, high, by: 'measured', findings };
  }
  if (twist?.share)
    return { share: twist.share, low: twist.share, high: twist.share, by: 'stated', findings };
  const { usual, low, high } = torsionRange(material);
  return { share: usual, low, high, by: 'material', findings };
}
