/** What the next readings brought, counted over benches: against readings at random, and against what was said. */
import { mean } from './judge-bench.ts';
import { minutesMore, type NextReadingRow, type ReadFurther } from './judge-next-reading.ts';

type Holds = (row: NextReadingRow) => boolean;

export function nextReadingLines(rows: readonly NextReadingRow[]): string[] {
  const count = (holds: Holds) => rows.filter(holds).length;
  return [
    `${rows.length} benches, ten minutes read, then ${minutesMore} minutes or more:`,
    `  a minute of what is proposed brings more than one at random on ${count(better)}`,
    `  nothing more is proposed, and readings at random bring nothing either, on ${count(asGood)}`,
    `  "enough" is said within the ten minutes on ${count(isEnough)}; at once on ${count(isEnoughAtOnce)}`,
    ...atOnceLines(rows.filter(isEnoughAtOnce)),
    worstLine(rows),
    `  taken off a minute, all benches together: ${perMinute(rows)}`,
    ...saidLines(rows),
  ];
}

const better: Holds = (row) => gainOf(row, row.proposed) > randomGain(row);
const asGood: Holds = (row) => !better(row) && isEnough(row) && randomGain(row) <= gainOf(row, row.proposed);
const isEnough: Holds = ({ enough }) => enough !== undefined;
const isEnoughAtOnce: Holds = (row) => isEnough(row) && row.proposed.minutes === 0;
/** The start stays for want of sureness. */
const isUnsure: Holds = ({ said }) => said.chance !== undefined;

function atOnceLines(rows: readonly NextReadingRow[]): string[] {
  const placed = rows.filter((row) => !isUnsure(row));
  const unsure = rows.filter(isUnsure);
  const near = placed.filter(({ before }) => before <= 1.05).length;
  const idle = unsure.filter(({ before, atRandom }) => mean(atRandom.map(({ worst }) => worst)) >= before);
  return [
    `    of the ${placed.length} whose marks had moved, ${near} lie within 5 % of the best`,
    `    of the ${unsure.length} where the start stays, readings at random bring nothing on ${idle.length}`,
  ];
}

function worstLine(rows: readonly NextReadingRow[]): string {
  const middle = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)].toFixed(3);
  const further = rows.flatMap(({ atRandom }) => atRandom);
  const minutes = (all: readonly ReadFurther[]) => mean(all.map((one) => one.minutes)).toFixed(1);
  return (
    `  worst reading over the least there is, median: ${middle(rows.map(({ before }) => before))} before, ` +
    `${middle(rows.map(({ proposed }) => proposed.worst))} as proposed ` +
    `(${minutes(rows.map(({ proposed }) => proposed))} minutes more), ` +
    `${middle(further.map(({ worst }) => worst))} at random (${minutes(further)})`
  );
}

function perMinute(rows: readonly NextReadingRow[]): string {
  const of = (taken: (row: NextReadingRow) => readonly ReadFurther[]) => {
    const all = rows.flatMap((row) =>
      taken(row).map((further) => ({ off: row.before - further.worst, further })),
    );
    const off = mean(all.map((one) => one.off));
    return (off / mean(all.map(({ further }) => further.minutes))).toFixed(4);
  };
  return `${of(({ proposed }) => [proposed])} as proposed, ${of(({ atRandom }) => atRandom)} at random`;
}

/** What ten minutes were said to bring beside what came, as proposed and at random. */
function saidLines(rows: readonly NextReadingRow[]): string[] {
  const percent = (values: number[]) => `${(100 * mean(values)).toFixed(1)} %`;
  const off = ({ before }: NextReadingRow, { worst }: ReadFurther) => 1 - worst / before;
  const line = (name: string, some: readonly NextReadingRow[]) =>
    `  ${name} (${some.length}): said ${percent(some.map(({ said }) => said.gain))}, ` +
    `as proposed ${percent(some.map((row) => off(row, row.proposed)))}, ` +
    `at random ${percent(some.flatMap((row) => row.atRandom.map((further) => off(row, further))))}`;
  const unsure = rows.filter(isUnsure);
  const placed = rows.filter((row) => !isUnsure(row));
  const changed = unsure.map(({ before, proposed }) => Number(proposed.worst !== before));
  return [
    ...(placed.length > 0 ? [line('taken off the worst where the marks had moved', placed)] : []),
    ...(unsure.length > 0
      ? [
          line('taken off the worst where the start stays', unsure),
          `    to move the marks: said ${percent(unsure.map(({ said }) => said.chance ?? 0))}, seen ${percent(changed)}`,
        ]
      : []),
  ];
}

/** What a minute took off the worst reading; nothing taken, nothing gained. */
function gainOf({ before }: NextReadingRow, { worst, minutes }: ReadFurther): number {
  return minutes > 0 ? (before - worst) / minutes : 0;
}

function randomGain(row: NextReadingRow): number {
  return mean(row.atRandom.map((further) => gainOf(row, further)));
}
