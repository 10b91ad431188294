import { keepOutZones } from '../engine/bench/ferrule-zones.ts';
import { readQuantity } from '../engine/units/read-quantity.ts';
import { missingWords, sheetsPdf } from '../paper/index.ts';
import { marksSheet } from '../sheets/marks-sheet.ts';
import {
  type Roll,
  rollLimitsM,
  type StripPaper,
  type StripsOn,
  usualRollM,
  usualSheet,
} from '../sheets/paper-size.ts';
import { type PrintFactors, printCorrection } from '../sheets/print-correction.ts';
import { stripsSheet } from '../sheets/strips-sheet.ts';
import type { Writer } from '../words/writer.ts';
import { CommandError, exitCodes } from './exit-codes.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { paperFonts } from './paper-fonts.ts';
import { marksWithSureness } from './sureness-of-work.ts';
import { type WorkedBuild, workBuildFile } from './work-build-file.ts';
import { writeOut } from './write-out.ts';

export interface StripsOptions {
  paper: StripPaper;
  rollWidth?: string;
  rollLength?: string;
  out: string;
  /** What the 100 mm rules of an earlier print measured. */
  ruleAcross?: string;
  ruleAlong?: string;
}

/** Strips and the list of marks as one PDF; answers what was written. */
export async function writeStrips(build: OpenBuild, options: StripsOptions): Promise<string> {
  const factors = factorsOf(options, build.writer);
  const worked = workBuildFile(build);
  const printedAt = new Date();
  const { bytes, missing } = await sheetsPdf(
    drawSheets(worked, {
      on: { paper: options.paper, roll: rollOf(options, build.writer) },
      factors,
      printedAt,
    }),
    {
      title: `${worked.choices.title}: strips`,
      printedAt,
      fonts: paperFonts(),
    },
  );
  writeOut(options.out, bytes);
  const written = `${options.out} is written. Print it at 100 %, then measure its rules before you use it.`;
  return `${written} ${missingWords(missing)}`.trimEnd();
}

function drawSheets(
  worked: WorkedBuild,
  { on, factors, printedAt }: { on: StripsOn; factors: PrintFactors; printedAt: Date },
) {
  const { choices, work } = worked;
  const stamp = `${choices.title} · ${printedAt.toISOString().slice(0, 10)}`;
  const zones = keepOutZones(work.blank, choices.ferruleClearM);
  return [
    stripsSheet(work.blank, work.marks, zones, { ...on, factors, stamp }),
    marksSheet(marksWithSureness(worked), { paper: usualSheet(on.paper), factors, stamp }),
  ];
}

function rollOf({ rollWidth, rollLength }: StripsOptions, w: Writer): Roll {
  return {
    widthM: within(
      measured(rollWidth, '--roll-width', w) ?? usualRollM,
      '--roll-width',
      rollLimitsM.width,
      w,
    ),
    lengthM: within(measured(rollLength, '--roll-length', w), '--roll-length', rollLimitsM.length, w),
  };
}

function within<L extends number | undefined>(
  lengthM: L,
  option: string,
  [least, most]: readonly [number, number],
  w: Writer,
): L {
  if (lengthM === undefined || (lengthM >= least && lengthM <= most)) return lengthM;
  const words = `${option} is ${w.length(lengthM)}; give ${w.length(least)} to ${w.length(most)}.`;
  throw new CommandError(words, exitCodes.input);
}

function factorsOf({ ruleAcross, ruleAlong }: StripsOptions, w: Writer): PrintFactors {
  const correction = printCorrection({
    acrossM: measured(ruleAcross, '--rule-across', w),
    alongM: measured(ruleAlong, '--rule-along', w),
  });
  if (correction.ok) return correction.factors;
  throw new CommandError(findingLines(correction.findings, w), exitCodes.input);
}

function measured(typed: string | undefined, path: string, w: Writer): number | undefined {
  if (typed === undefined) return undefined;
  const read = readQuantity(typed, { dimension: 'length', system: 'mm', path });
  if (read.ok) return read.si;
  throw new CommandError(findingLines([read.finding], w), exitCodes.input);
}
