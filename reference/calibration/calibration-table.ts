/** What was promised against what the true rod gave, as one table a kind of bench. */
import { quantile } from '../../src/engine/sureness/spread.ts';
import type { Readings } from '../../test/support/unlike-bench.ts';
import { type UnlikeKind, unlikeKinds } from '../../test/support/unlike-blanks.ts';
import { type BenchRow, mean } from './judge-bench.ts';

export interface Figures {
  benches: number;
  moved: number;
  /** Worse than the start by more than 1 % and 3 %, and by how much at most. */
  worse1: number;
  worse3: number;
  worstLoss: number;
  /** Of the benches whose start could stay: moved, worse than it by more than 3 %, and by how much at most. */
  fromLawful: { moved: number; worse3: number; worstLoss: number };
  meanGain: number;
  /** True worst reading over what was promised: median and nine of ten. */
  overLikeliest: [number, number];
  overExpected: [number, number];
  /** Over the best that there is on the true rod. */
  overBest: [number, number];
  inRange: number;
  costHeld: number;
  /** Places under a weight never hung: share inside their ±, of the tip and of the flags; the tip's ± in the middle. */
  neverHung?: { benches: number; tip: number; tipHalf: number; flags: number; tipReach: number };
  /** Of the marks placed on the likeliest blank, made or not, by quarters of what was said: benches, said, true. */
  better: ({ benches: number; said: number; true: number } | undefined)[];
  kinds: (KindFigures & { kind: UnlikeKind | 'all' })[];
}
export interface KindFigures {
  benches: number;
  bandHeld: number;
  bandHalf: number;
  bandWidth: number;
  errorRms: number;
  marksHeld: number;
  marksHalf: number;
  markSigmaMm: number;
}

export function figuresOf(all: readonly BenchRow[], readings: Readings): Figures | undefined {
  const rows = all.filter((row) => row.readings === readings);
  if (rows.length === 0) return undefined;
  const losses = rows.map(({ ours, start }) => ours / start - 1);
  const lawful = losses.filter((_, i) => rows[i].moved && !rows[i].startBreaks);
  const share = (holds: (row: BenchRow) => boolean) => mean(rows.map((row) => Number(holds(row))));
  return {
    benches: rows.length,
    moved: rows.filter(({ moved }) => moved).length,
    worse1: losses.filter((by) => by > 0.01).length,
    worse3: losses.filter((by) => by > 0.03).length,
    worstLoss: Math.max(...losses),
    fromLawful: {
      moved: lawful.length,
      worse3: lawful.filter((by) => by > 0.03).length,
      worstLoss: Math.max(0, ...lawful),
    },
    meanGain: -mean(losses),
    overLikeliest: middleAndTail(rows.map(({ ours, likeliest }) => ours / likeliest)),
    overExpected: middleAndTail(rows.map(({ ours, expected }) => ours / expected)),
    overBest: middleAndTail(rows.map(({ ours, best }) => ours / best)),
    inRange: share(({ ours, low, high }) => ours >= low && ours <= high),
    costHeld: share(({ ours, best, costOfKeeping }) => ours / best - 1 <= costOfKeeping),
    neverHung: neverHungIn(rows),
    better: [0, 1, 2, 3].map((quarter) => betterIn(rows, quarter)),
    kinds: [...unlikeKinds, 'all' as const].flatMap((kind) => {
      const own = rows.filter((row) => kind === 'all' || row.kind === kind);
      return own.length > 0 ? [{ kind, ...kindFigures(own) }] : [];
    }),
  };
}

function middleAndTail(ratios: readonly number[]): [number, number] {
  const sorted = [...ratios].sort((a, b) => a - b);
  return [quantile(sorted, 0.5), quantile(sorted, 0.9)];
}

function neverHungIn(rows: readonly BenchRow[]): Figures['neverHung'] {
  const judged = rows.flatMap(({ neverHung }) => neverHung ?? []);
  if (judged.length === 0) return undefined;
  const within = (off: readonly number[], reach: number) =>
    mean(off.map((by) => Number(Math.abs(by) <= reach)));
  const tips = judged.flatMap(({ tip }) => tip);
  return {
    benches: judged.length,
    tip: within(tips, 1),
    tipHalf: within(tips, 0.6745 / 1.96),
    flags: within(
      judged.flatMap(({ flags }) => flags),
      1,
    ),
    tipReach: middleAndTail(judged.map(({ tipReach }) => tipReach))[0],
  };
}

function betterIn(rows: readonly BenchRow[], quarter: number): Figures['better'][number] {
  const own = rows
    .map(({ lead }) => lead)
    .filter(({ said }) => Math.min(3, Math.floor(4 * said)) === quarter);
  if (own.length === 0) return undefined;
  const true_ = mean(own.map(({ isTrue }) => Number(isTrue)));
  return { benches: own.length, said: mean(own.map(({ said }) => said)), true: true_ };
}

function kindFigures(rows: readonly BenchRow[]): KindFigures {
  const off = rows.flatMap(({ marksOff }) => marksOff);
  const within = (reach: number) => mean(off.map((by) => Number(Math.abs(by) <= reach)));
  return {
    benches: rows.length,
    bandHeld: mean(rows.map(({ bandHeld }) => bandHeld)),
    bandHalf: mean(rows.map(({ bandHalf }) => bandHalf)),
    bandWidth: mean(rows.map(({ bandWidth }) => bandWidth)),
    errorRms: mean(rows.map(({ errorRms }) => errorRms)),
    marksHeld: within(1.96),
    marksHalf: within(0.6745),
    markSigmaMm: 1000 * mean(rows.map(({ markSigmaM }) => markSigmaM)),
  };
}

/** As lines of a page. */
export function calibrationLines(rows: readonly BenchRow[]): string[] {
  return (['none', 'one weight', 'full'] as const).flatMap((readings) => {
    const figures = figuresOf(rows, readings);
    return figures ? [`## ${title[readings]}`, '', ...linesOf(figures), ''] : [];
  });
}

const title: Record<Readings, string> = {
  none: 'Diameters alone',
  'one weight': 'One weight read at four flags',
  full: "Twenty minutes' protocol",
};
const percent = (share: number) => `${Math.round(100 * share)} %`;
const pair = ([middle, tail]: [number, number]) => `${middle.toFixed(2)}, ${tail.toFixed(2)}`;

function linesOf(figures: Figures): string[] {
  const { better, kinds, neverHung, fromLawful: lawful } = figures;
  return [
    '| what | seen |',
    '|---|---|',
    `| benches; marks moved on | ${figures.benches}; ${figures.moved} |`,
    `| worse than the start by over 1 %, over 3 %; at most | ${figures.worse1}, ${figures.worse3}; ${percent(Math.max(0, figures.worstLoss))} |`,
    `| marks moved from a start that could stay; worse by over 3 %; at most | ${lawful.moved}; ${lawful.worse3}; ${percent(lawful.worstLoss)} |`,
    `| better than the start, mean | ${percent(figures.meanGain)} |`,
    `| true worst over the likeliest blank's: median, nine of ten | ${pair(figures.overLikeliest)} |`,
    `| true worst over the expected one | ${pair(figures.overExpected)} |`,
    `| over the best on the true rod | ${pair(figures.overBest)} |`,
    `| true worst inside its 95 % range | ${percent(figures.inRange)} |`,
    `| cost of keeping inside its 95 of 100 | ${percent(figures.costHeld)} |`,
    ...(neverHung
      ? [
          `| a weight never hung (${neverHung.benches} benches): tip inside its ±, inside a third of it; flags inside theirs; the tip's ± over the length | ${percent(neverHung.tip)}, ${percent(neverHung.tipHalf)}; ${percent(neverHung.flags)}; ${(100 * neverHung.tipReach).toFixed(1)} % |`,
        ]
      : []),
    ...better.map((quarter, i) => {
      const range = `"other marks are better on N of 100", ${25 * i} to ${25 * (i + 1)}`;
      const seen = quarter
        ? `${quarter.benches} benches: said ${percent(quarter.said)}, true ${percent(quarter.true)}`
        : 'never said';
      return `| ${range} | ${seen} |`;
    }),
    '',
    '| blanks | benches | EI in its 95 % band | in its 50 % band | width, ln EI | error, rms | marks inside ± | inside 50 % | σ of a mark |',
    '|---|---|---|---|---|---|---|---|---|',
    ...kinds.map(
      (of) =>
        `| ${of.kind} | ${of.benches} | ${percent(of.bandHeld)} | ${percent(of.bandHalf)} | ${of.bandWidth.toFixed(2)} | ${percent(of.errorRms)} | ${percent(of.marksHeld)} | ${percent(of.marksHalf)} | ${of.markSigmaMm.toFixed(0)} mm |`,
    ),
  ];
}
