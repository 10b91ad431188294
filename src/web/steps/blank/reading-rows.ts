import type { Row } from '../../../record/document.ts';
import { siOf } from '../../read/values.ts';

/** What was, or is to be, read under one weight. */
export interface TestRows {
  test: Row;
  readings: Row[];
}
export interface SetupRows {
  setup: Row;
  tests: TestRows[];
}

/** Set-ups with their weights and readings, in the order they are taken; rows of what was put away left out. */
export function setupRowsOf(rows: (collection: string) => readonly Row[]): SetupRows[] {
  const [tests, readings] = [rows('tests'), rows('readings')];
  return rows('setups').map((setup) => ({
    setup,
    tests: tests
      .filter((test) => test.fields.setup === setup.id)
      .map((test) => ({ test, readings: readings.filter((reading) => reading.fields.test === test.id) })),
  }));
}

interface ReadingCount {
  read: number;
  planned: number;
}

export function countReadings(setups: readonly SetupRows[]): ReadingCount {
  const all = setups.flatMap(({ setup, tests }) =>
    tests.flatMap(({ test, readings }) =>
      setup.fields.kind === 'span' ? [siOf(test, 'sag')] : readings.map((reading) => siOf(reading, 'drop')),
    ),
  );
  return { read: all.filter((value) => value !== undefined).length, planned: all.length };
}

/** Stations read in a set-up, each once, from the tip down. */
export function flagsOf({ tests }: SetupRows): number[] {
  const stations = tests.flatMap(({ readings }) => readings.flatMap((row) => siOf(row, 'fromTip') ?? []));
  return [...new Set(stations)].sort((a, b) => a - b);
}
