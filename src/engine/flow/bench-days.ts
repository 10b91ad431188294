/** The bench taken apart by the day its set-ups were read: each day clamped anew, the blank the same. */
import type { Bench } from '../bench/bench.ts';

export interface DayOfBench {
  name: string;
  bench: Bench;
  /** Drops, sags and curves that were read. */
  readings: number;
}

/** What carries no day was read on the first, which has no name. */
export const firstDay = '';

/** Days with anything read, in the order they first appear. */
export function benchDays(bench: Bench): DayOfBench[] {
  const curves = bench.curves ?? [];
  const of = ({ day }: { day?: string }) => day ?? firstDay;
  const names = [...new Set([...bench.setups.map(of), ...curves.map(of)])];
  return names
    .map((name) => {
      const day = {
        ...bench,
        setups: bench.setups.filter((setup) => of(setup) === name),
        curves: curves.filter((curve) => of(curve) === name),
      };
      return { name, bench: day, readings: readingsOf(day) };
    })
    .filter(({ readings }) => readings > 0);
}

function readingsOf({ setups, curves = [] }: Bench): number {
  const drops = setups.map((setup) =>
    setup.kind === 'span'
      ? setup.tests.length
      : setup.tests.reduce((sum, { readings }) => sum + readings.length, 0),
  );
  return drops.reduce((sum, count) => sum + count, 0) + curves.length;
}
