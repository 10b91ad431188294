/** The long run behind docs/calibration.md: benches judged one by one, kept line by line, so that it can be gone on with. */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { Readings } from '../test/support/unlike-bench.ts';
import { type UnlikeKind, unlikeBlank, unlikeKinds } from '../test/support/unlike-blanks.ts';
import { calibrationLines } from './calibration/calibration-table.ts';
import { type BenchRow, judgeBench } from './calibration/judge-bench.ts';
import { judgeNextReading, type NextReadingRow } from './calibration/judge-next-reading.ts';
import { nextReadingLines } from './calibration/next-reading-lines.ts';

interface Unbent {
  seed: number;
  readings: Readings;
  unbent: true;
}

/** So many seeds from this one on, of blanks of one kind where it is named. */
export function seedsOf(from: number, count: number, kind?: UnlikeKind): number[] {
  if (kind && !unlikeKinds.includes(kind))
    throw new Error(`--kind ${kind}: take one of ${unlikeKinds.join(', ')}`);
  const seeds: number[] = [];
  for (let seed = from; seeds.length < count; seed++) {
    if (!kind || unlikeBlank(seed).kind === kind) seeds.push(seed);
  }
  return seeds;
}

/** Judges what `file` does not hold yet. */
export function judgeSeeds(
  seeds: readonly number[],
  readings: readonly Readings[],
  file: string,
  progress: (left: number) => void,
): void {
  const done = new Set(keptIn([file]).map((row) => `${row.seed} ${row.readings}`));
  const wanted = seeds.flatMap((seed) => readings.map((of) => ({ seed, readings: of })));
  const left = wanted.filter((row) => !done.has(`${row.seed} ${row.readings}`));
  left.forEach((row, i) => {
    const judged: BenchRow | Unbent = judgeBench(row.seed, row.readings) ?? { ...row, unbent: true };
    appendFileSync(file, `${JSON.stringify(judged)}\n`);
    progress(left.length - i - 1);
  });
}

/** What the next readings bring, for the seeds that `file` does not hold yet. */
export function judgeNextReadings(
  seeds: readonly number[],
  file: string,
  progress: (left: number) => void,
): void {
  const done = new Set(linesIn<{ seed: number }>([file]).map(({ seed }) => seed));
  const left = seeds.filter((seed) => !done.has(seed));
  left.forEach((seed, i) => {
    const row: NextReadingRow | { seed: number; unbent: true } = judgeNextReading(seed) ?? {
      seed,
      unbent: true,
    };
    appendFileSync(file, `${JSON.stringify(row)}\n`);
    progress(left.length - i - 1);
  });
}

/** The counts of the next readings, and how many benches found no bend on the true rod. */
export function nextReadingCounts(files: readonly string[]): { lines: string[]; unbent: number } {
  const kept = linesIn<NextReadingRow | { unbent: true }>(files);
  const rows = kept.filter((row): row is NextReadingRow => !('unbent' in row));
  return { lines: nextReadingLines(rows), unbent: kept.length - rows.length };
}

/** The page's tables, and how many benches found no bend on the true rod. */
export function tablesOf(files: readonly string[]): { lines: string[]; unbent: number } {
  const kept = keptIn(files);
  const rows = kept.filter((row): row is BenchRow => !('unbent' in row));
  return { lines: calibrationLines(rows), unbent: kept.length - rows.length };
}

function keptIn(files: readonly string[]): (BenchRow | Unbent)[] {
  return linesIn(files);
}

function linesIn<T>(files: readonly string[]): T[] {
  return files
    .filter((file) => existsSync(file))
    .flatMap((file) => readFileSync(file, 'utf8').split('\n'))
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}
