/**
 * Times the engine's work in one run, warm and in process, beside scipy and CalculiX where they are installed.
 * Run by `npm run bench`.
 */
import { Bench } from 'tinybench';
import { bend, bendDefaults } from '../src/engine/bend/bend.ts';
import { type LayoutProgress, layout } from '../src/engine/layout/layout.ts';
import type { LayoutRequest } from '../src/engine/layout/layout-request.ts';
import { fitStiffness } from '../src/engine/stiffness/fit.ts';
import { samplePosterior } from '../src/engine/stiffness/posterior.ts';
import { timePhoto } from './bench-photo.ts';
import { shelfSize, timeShelf } from './bench-shelf.ts';
import { bendInSpaceOnce, moveGuideInSpace, spiralOfTwelve } from './bench-space.ts';
import { regionOnce, spoolOnce } from './bench-spool.ts';
import { timeStandFit } from './bench-stand.ts';
import * as work from './bench-work.ts';
import { calculixBend, hasCalculix, withRowsAtCorners } from './live/calculix.ts';
import { pythonWithScipy, scipyBends } from './live/scipy.ts';
import { placeAt } from './statics.ts';

export interface BenchRow {
  work: string;
  /** Median; undefined where it was not run. */
  value: number | undefined;
  unit: string;
  target?: { atMost?: number; atLeast?: number };
  note?: string;
}

/** `quick` spends a tenth of the time on every row; `live` runs the other programs too. */
export async function benchAll(options: { quick: boolean; live: boolean }): Promise<BenchRow[]> {
  const timeMs = options.quick ? 60 : 600;
  const resolution = bendDefaults.resolution;
  const bendMs = await medianMs(work.bendOnce(resolution), timeMs);
  const movedMs = await medianMs(work.moveGuide(resolution), timeMs);
  return [
    row('one bend with line and rings, cold start', bendMs, 'ms', { atMost: 0.5 }, `${resolution} elements`),
    row('re-solve after a guide moved, one load, with readings', movedMs, 'ms', { atMost: 0.15 }),
    row(
      'ladder of 5 loads and all metrics, nothing kept',
      await medianMs(work.ladderOfFive(), timeMs),
      'ms',
      { atMost: 2.5 },
    ),
    ...layoutRows(options.quick ? 3 : 5),
    ...(await spoolRows(timeMs)),
    ...(await spaceRows({ bendMs, movedMs }, timeMs, options.quick ? 3 : 5)),
    ...fitRows(options.quick ? 3 : 5),
    row('cost against resolution, 100 to 3200 elements', await costExponent(timeMs), 'exponent', {
      atMost: 1.1,
    }),
    ...(await floorRows(resolution, timeMs)),
    ...(await shelfRows(options.quick ? 5 : 25)),
    ...photoRows(options.quick ? 1 : 5),
    ...(options.live ? liveRows(bendMs) : []),
  ];
}

/** The list of builds, as the server reads it from SQLite. */
async function shelfRows(times: number): Promise<BenchRow[]> {
  const { list, search, searchForNothing } = await timeShelf(times);
  const of = `of ${shelfSize} builds, with the count`;
  return [
    row(`the first 50 ${of}`, list, 'ms', { atMost: 100 }),
    row(`search by three words ${of}`, search, 'ms', { atMost: 100 }),
    row(`search that finds nothing ${of}`, searchForNothing, 'ms', { atMost: 100 }),
  ];
}

/** The processor's seconds beside the clock's, which other programs stretch. */
function photoRows(times: number): BenchRow[] {
  const { trace, decode, trace48, look12, look2 } = timePhoto(times);
  const busy = (processor: number) => `${processor.toFixed(2)} s of the processor`;
  return [
    row(
      'photograph of 12 MP traced, without decoding',
      trace.wall,
      's',
      { atMost: 3 },
      busy(trace.processor),
    ),
    row('its JPEG file decoded, as the door does', decode.wall, 's', undefined, busy(decode.processor)),
    row(
      'picture of 12 MP: marks and ends found, traced',
      look12.wall,
      's',
      { atMost: 1.5 },
      `${busy(look12.processor)}; the page decodes it in some tenths more`,
    ),
    row(
      'live frames of 2 MP: marks and ends found, traced',
      1 / look2.wall,
      'a second',
      { atLeast: 2 },
      busy(look2.processor),
    ),
    row('the same in 48 MP traced', trace48.wall, 's', undefined, busy(trace48.processor)),
  ];
}

function row(
  name: string,
  value: number | undefined,
  unit: string,
  target?: BenchRow['target'],
  note?: string,
): BenchRow {
  return { work: name, value, unit, ...(target ? { target } : {}), ...(note ? { note } : {}) };
}

async function medianMs(run: () => unknown, timeMs: number): Promise<number> {
  const bench = new Bench({ time: timeMs, warmupTime: timeMs / 3 });
  bench.add('work', () => {
    run();
  });
  await bench.run();
  const { result } = bench.tasks[0];
  if (!result || !('latency' in result)) throw new Error('the work did not run');
  return result.latency.p50;
}

function layoutRows(times: number): BenchRow[] {
  const { firstMs, wholeMs } = timeLayout(work.layoutOfTwelve(), times);
  return [
    row('layout, 12 guides, 5 loads: first good answer', firstMs, 'ms', { atMost: 150 }),
    row('layout, 12 guides, 5 loads: complete with slack', wholeMs, 'ms', { atMost: 600 }),
  ];
}

function timeLayout(request: LayoutRequest, times: number) {
  const runs = Array.from({ length: times + 3 }, () => {
    const started = performance.now();
    let firstMs: number | undefined;
    const answer = layout(request, (_: LayoutProgress) => {
      firstMs ??= performance.now() - started;
    });
    if (answer.status === 'refused') throw new Error(JSON.stringify(answer.findings[0]));
    return { firstMs: firstMs ?? performance.now() - started, wholeMs: performance.now() - started };
  }).slice(3);
  return { firstMs: median(runs.map((run) => run.firstMs)), wholeMs: median(runs.map((run) => run.wholeMs)) };
}

/** The line off a fixed spool: one answer of the door, and where each of nine rings may stand. */
async function spoolRows(timeMs: number): Promise<BenchRow[]> {
  return [
    row('line off the spool, one answer', await medianMs(spoolOnce(), timeMs), 'ms', { atMost: 5 }),
    row('first ring as a region, nine rings', await medianMs(regionOnce(), timeMs), 'ms', { atMost: 500 }),
  ];
}

/** A spiral pulled sideways, beside the same rod in its plane. */
async function spaceRows(plane: { bendMs: number; movedMs: number }, timeMs: number, times: number) {
  const { resolution } = bendDefaults;
  const bendMs = await medianMs(bendInSpaceOnce(resolution), timeMs);
  const movedMs = await medianMs(moveGuideInSpace(resolution), timeMs);
  const placed = timeLayout(spiralOfTwelve(), times);
  return [
    row('one bend in space, ten rings, cold start', bendMs, 'ms', { atMost: 4 }, `${resolution} elements`),
    row('bend in space over bend in the plane', bendMs / plane.bendMs, 'times'),
    row('in space: re-solve after a guide moved, with readings', movedMs, 'ms', { atMost: 0.8 }),
    row('the same over its plane', movedMs / plane.movedMs, 'times'),
    row('layout in space, 12 guides, 5 loads: first good answer', placed.firstMs, 'ms', { atMost: 300 }),
    row('layout in space, 12 guides, 5 loads: complete with slack', placed.wholeMs, 'ms', { atMost: 1500 }),
  ];
}

function fitRows(times: number): BenchRow[] {
  const request = work.fitOfThirtyTwo();
  const runs = Array.from({ length: times + 3 }, () => {
    const started = performance.now();
    const { answer, posterior } = fitStiffness(request);
    if (!posterior) throw new Error(`the fit was ${answer.status}`);
    const fitMs = performance.now() - started;
    for (const rod of samplePosterior({ posterior }, 200, 3))
      bend(
        { ...work.tenRings, rod, guides: [], masses: [], load: { tip: { xN: 0, yN: -0.5 } } },
        { resolution: 120 },
      );
    return { fitMs, withBendsMs: performance.now() - started };
  }).slice(3);
  return [
    row('fit with band, 32 readings', median(runs.map((run) => run.fitMs)), 'ms', { atMost: 250 }),
    row('the same with 200 posterior bends', median(runs.map((run) => run.withBendsMs)), 'ms', {
      atMost: 600,
    }),
    row('fit from three pictures of one stand', timeStandFit('none', times), 'ms'),
    row('the same, the clamp slipped between them', timeStandFit('clamp', 1), 'ms'),
  ];
}

/** Slope of log time against log elements. */
async function costExponent(timeMs: number): Promise<number> {
  const sizes = [100, 200, 400, 800, 1600, 3200];
  const points: { x: number; y: number }[] = [];
  for (const size of sizes) {
    points.push({ x: Math.log(size), y: Math.log(await medianMs(work.newtonStep(size).step, timeMs / 3)) });
  }
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(points.map((p) => p.x)), mean(points.map((p) => p.y))];
  return mean(points.map((p) => (p.x - mx) * (p.y - my))) / mean(points.map((p) => (p.x - mx) ** 2));
}

async function floorRows(resolution: number, timeMs: number): Promise<BenchRow[]> {
  const { step, floor, elements } = work.newtonStep(resolution);
  const [stepMs, floorMs] = [await medianMs(step, timeMs), await medianMs(floor, timeMs)];
  return [
    row('one Newton step', 1000 * stepMs, 'µs', undefined, `${elements} elements`),
    row('floor: bare tridiagonal solve with its sines and cosines', 1000 * floorMs, 'µs'),
    row('Newton step over floor', stepMs / floorMs, 'times', { atMost: 8 }),
  ];
}

/** The same rod in the other programs, each at an accuracy of 0.2 mm or better. */
function liveRows(bendMs: number): BenchRow[] {
  const python = pythonWithScipy();
  const fine = bend(work.tenRings, { resolution: 3000 });
  const rows: BenchRow[] = [];
  if (python) {
    const theirs = scipyBends(python, [{ ...work.tenRings, tolerance: 1e-3 }])[0];
    const apartMm = 1000 * Math.max(...theirs.points.map((p) => distance(p, placeAt(fine, p.fromTipM))));
    rows.push(
      row(
        'scipy solve_bvp, the same rod',
        1000 * theirs.seconds,
        'ms',
        undefined,
        `residual 1e-3, ${apartMm.toFixed(3)} mm off`,
      ),
    );
    rows.push(row('scipy over one bend', (1000 * theirs.seconds) / bendMs, 'times', { atLeast: 100 }));
  } else rows.push(row('scipy solve_bvp, the same rod', undefined, 'ms', undefined, 'not run: no scipy'));
  rows.push(calculixRow());
  return rows;
}

function calculixRow(): BenchRow {
  const name = 'CalculiX, 30 B32R elements, rings on the axis';
  if (!hasCalculix()) return row(name, undefined, 'ms', undefined, 'not run: no ccx');
  const onAxis = withRowsAtCorners(
    {
      ...work.tenRings,
      guides: work.tenRings.guides!.map((guide) => ({ ...guide, ringHeightM: 0 })),
      reel: { ...work.tenRings.reel!, offsetM: 0 },
    },
    30,
  );
  return row(
    name,
    1000 * calculixBend(onAxis, bend(onAxis), 30).seconds,
    'ms',
    undefined,
    'one solve under forces known beforehand',
  );
}

function distance(a: { xM: number; yM: number }, b: { xM: number; yM: number }): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
