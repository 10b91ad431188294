/** The long run behind docs/calibration.md: benches judged one by one, kept line by line, so that it can be gone on with. */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { Readings } from '../test/support/unlike-bench.ts';
import { calibrationLines } from './calibration/calibration-table.ts';
import { type BenchRow, judgeBench } from './calibration/judge-bench.ts';

interface Unbent {
  seed: number;
  readings: Readings;
  unbent: true;
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

/** The page's tables, and how many benches found no bend on the true rod. */
export function tablesOf(files: readonly string[]): { lines: string[]; unbent: number } {
  const kept = keptIn(files);
  const rows = kept.filter((row): row is BenchRow => !('unbent' in row));
  return { lines: calibrationLines(rows), unbent: kept.length - rows.length };
}

function keptIn(files: readonly string[]): (BenchRow | Unbent)[] {
  return files
    .filter((file) => existsSync(file))
    .flatMap((file) => readFileSync(file, 'utf8').split('\n'))
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}
