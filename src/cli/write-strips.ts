import { writeFileSync } from 'node:fs';
import { fromWhereCalled } from '../door/open-image.ts';
import { keepOutZones } from '../engine/bench/ferrule-zones.ts';
import { readQuantity } from '../engine/units/read-quantity.ts';
import { missingWords, sheetsPdf } from '../paper/index.ts';
import { marksSheet } from '../sheets/marks-sheet.ts';
import type { PaperName } from '../sheets/paper-size.ts';
import { type PrintFactors, printCorrection } from '../sheets/print-correction.ts';
import { stripsSheet } from '../sheets/strips-sheet.ts';
import { shopWriter } from '../words/writer.ts';
import { CommandError, exitCodes } from './exit-codes.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { paperFonts } from './paper-fonts.ts';
import { marksWithSureness } from './sureness-of-work.ts';
import { type WorkedBuild, workBuildFile } from './work-build-file.ts';

export interface StripsOptions {
  paper: PaperName;
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
  const { bytes, missing } = await sheetsPdf(drawSheets(worked, { ...options, factors, printedAt }), {
    title: `${worked.choices.title}: strips`,
    printedAt,
    fonts: paperFonts(),
  });
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
  { paper, factors, printedAt }: { paper: PaperName; factors: PrintFactors; printedAt: Date },
) {
  const { choices, work } = worked;
  const stamp = `${choices.title} · ${printedAt.toISOString().slice(0, 10)}`;
  const zones = keepOutZones(work.blank, choices.ferruleClearM);
  return [
    stripsSheet(work.blank, work.marks, zones, { paper, factors, stamp }),
    marksSheet(marksWithSureness(worked), { paper, factors, stamp }),
  ];
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
