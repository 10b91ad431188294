import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { fromWhereCalled } from '../door/open-image.ts';
import type { Finding } from '../engine/finding.ts';
import type { TurnedSection } from '../engine/rotation/turned-section.ts';
import { systemOfTape } from '../engine/units/tape-step.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import { readBuildFile } from '../record/file-read.ts';
import { largestFile } from '../record/file-shape.ts';
import type { Objection } from '../record/operation.ts';
import { type BuildReading, readBuild } from '../record/read-build.ts';
import { type DeliveredWords, readDelivered } from '../record/read-delivered.ts';
import { type LoadTest, readLoadTests } from '../record/read-load-tests.ts';
import { type CountedSwing, readSwings } from '../record/read-swings.ts';
import { readTurnedSections } from '../record/read-turned.ts';
import { unitsOf, withHabits } from '../record/shop-habits.ts';
import { sentenceOf } from '../words/sentence.ts';
import { type ShopWriter, shopWriter, type Writer } from '../words/writer.ts';
import { CommandError, exitCodes } from './exit-codes.ts';

export interface OpenBuild extends BuildReading {
  fileName: string;
  /** Writes in the units asked for, else in those of the tape. */
  writer: ShopWriter;
  /** Sections that were turned about their axis. */
  turned: TurnedSection[];
  /** Load tests, newest last. */
  loadTests: LoadTest[];
  /** Swings counted by hand. */
  swings: CountedSwing[];
  /** What the papers that leave with the rod say. */
  delivered: DeliveredWords;
}

/** A build file as the engine takes it; `-` is standard input. Throws a CommandError that says why not. */
export function openBuild(path: string, units?: UnitSystem): OpenBuild {
  const read = readBuildFile(readText(path), new Date().toISOString());
  if (read.status === 'refused') {
    throw new CommandError(`${path} is refused:\n${read.findings.map(pathLine).join('\n')}`, exitCodes.input);
  }
  const { habits } = read.build;
  const state = withHabits(read.build.state, habits);
  const fileName = path === '-' ? 'standard input' : basename(path);
  const { weighsIn, temperatureIn, ...shop } = unitsOf(habits);
  const reading = readBuild(state, { tapeStep: shop.tapeStep });
  const tapeStep = reading.choices?.tapeStep;
  return {
    fileName,
    turned: readTurnedSections(state),
    swings: readSwings(state),
    delivered: readDelivered(state),
    loadTests: readLoadTests(state),
    ...reading,
    writer: shopWriter({
      system: units ?? systemOfTape(tapeStep ?? '1/8 in'),
      tapeStep,
      weighsIn,
      temperatureIn: units ? undefined : temperatureIn,
    }),
  };
}

/** One finding a line: where, and what to do. */
export function findingLines(findings: readonly Finding[], writer: Writer): string {
  return findings.map((one) => pathLine({ path: one.path, message: sentenceOf(one, writer) })).join('\n');
}

function pathLine({ path, message }: Objection): string {
  return `  ${path === '' ? '' : `${path}: `}${message}`;
}

function readText(path: string): string {
  try {
    if (path === '-') return readFileSync(0, 'utf8');
    const file = fromWhereCalled(path);
    const { size } = statSync(file);
    if (size <= largestFile) return readFileSync(file, 'utf8');
    const mb = Math.round(size / 1024 ** 2);
    throw new CommandError(
      `${path} has ${mb} MB; a build file has at most ${largestFile / 1024 ** 2} MB. Export it without its attachments.`,
      exitCodes.input,
    );
  } catch (error) {
    if (error instanceof CommandError) throw error;
    const reason = error instanceof Error ? error.message : String(error);
    throw new CommandError(
      `${path} cannot be read: ${reason}. Give the path of an exported build.`,
      exitCodes.input,
    );
  }
}
