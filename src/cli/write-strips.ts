import { writeFileSync } from 'node:fs';
import { fromWhereCalled } from '../door/open-image.ts';
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
import { shopWriter } from '../words/writer.ts';
import { CommandError, exitCodes } from './exit-codes.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { paperFonts } from './paper-fonts.ts';
import { marksWithSureness } from './sureness-of-work.ts';
import { type WorkedBuild, workBuildFile } from './work-build-file.ts';

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
  const factors = factorsOf(options);
  const worked = workBuildFile(build);
  const printedAt = new Date();
  const { bytes, missing } = await sheetsPdf(
    drawSheets(worked, { on: { paper: options.paper, roll: rollOf(options) }, factors, printedAt }),
    {
      title: `${worked.choices.title}: strips`,
      printedAt,
      fonts: paperFonts(),
    },
  );
  try {
    writeFileSync(fromWhereCalled(options.out), bytes);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new CommandError(
      `${options.out} cannot be written: ${reason}. Give another --out.`,
      exitCodes.input,
    );
  }
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

function rollOf({ rollWidth, rollLength }: StripsOptions): Roll {
  return {
    widthM: within(measured(rollWidth, '--roll-width') ?? usualRollM, '--roll-width', rollLimitsM.width),
    lengthM: within(measured(rollLength, '--roll-length'), '--roll-length', rollLimitsM.length),
  };
}

function within<L extends number | undefined>(
  lengthM: L,
  option: string,
  [least, most]: readonly [number, number],
): L {
  if (lengthM === undefined || (lengthM >= least && lengthM <= most)) return lengthM;
  const words = `${option} is ${lengthM * 1000} mm; give ${least * 1000} to ${most * 1000} mm.`;
  throw new CommandError(words, exitCodes.input);
}

function factorsOf({ ruleAcross, ruleAlong }: StripsOptions): PrintFactors {
  const correction = printCorrection({
    acrossM: measured(ruleAcross, '--rule-across'),
    alongM: measured(ruleAlong, '--rule-along'),
  });
  if (correction.ok) return correction.factors;
  throw new CommandError(findingLines(correction.findings, shopWriter({ system: 'mm' })), exitCodes.input);
}

function measured(typed: string | undefined, path: string): number | undefined {
  if (typed === undefined) return undefined;
  const read = readQuantity(typed, { dimension: 'length', system: 'mm', path });
  if (read.ok) return read.si;
  throw new CommandError(findingLines([read.finding], shopWriter({ system: 'mm' })), exitCodes.input);
}
