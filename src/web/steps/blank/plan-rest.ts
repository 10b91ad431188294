import type { Change } from '../../../record/operation.ts';
import { flagOf, siOf, textOf } from '../../read/values.ts';
import {
  loadRows,
  onTape,
  type PlannedLoad,
  type PlannedSetup,
  type PlanRowsOptions,
  planRows,
  readingRows,
} from './plan-rows.ts';
import type { SetupRows, TestRows } from './reading-rows.ts';

/**
 * A protocol's rows, without what stands or was read already: a set-up with the clamp at the same place is gone on
 * with, and under a weight about as heavy no flag is asked twice.
 */
export function restOfPlan(
  planned: readonly PlannedSetup[],
  standing: readonly SetupRows[],
  options: PlanRowsOptions,
): Change[] {
  const pairs = planned.map((plan) => ({ plan, there: standing.find((rows) => isSamePlace(rows, plan)) }));
  const fresh = pairs.filter(({ there }) => !there).map(({ plan }) => plan);
  const gone = pairs.flatMap(({ plan, there }) => (there ? restOfSetup(plan, there, options) : []));
  return [...gone, ...planRows({ setups: fresh }, options)];
}

/** As near as a clamp is set back by hand. */
const samePlaceM = 0.01;

function isSamePlace({ setup }: SetupRows, { clampFromTipM }: PlannedSetup): boolean {
  if (textOf(setup, 'kind') === 'span') return false;
  return Math.abs((siOf(setup, 'clampFromTip') ?? -1) - clampFromTipM) < samePlaceM;
}

function restOfSetup(
  { loads }: PlannedSetup,
  { setup, tests }: SetupRows,
  options: PlanRowsOptions,
): Change[] {
  const taken = new Set<TestRows>();
  return loads.flatMap((load, index) => {
    const known = tests.find((rows) => !taken.has(rows) && isSameWeight(rows, load));
    if (!known) return loadRows(setup.id, load, tests.length + index, options);
    taken.add(known);
    return restOfLoad(load, known, options);
  });
}

/** A weight that tells as much: planned anew from better knowledge, it differs a little. Half of it does not. */
function isSameWeight({ test }: TestRows, { massKg }: PlannedLoad): boolean {
  const hungKg = siOf(test, 'hung') ?? 0;
  if (massKg === 0 || hungKg === 0) return massKg === hungKg;
  return Math.abs(Math.log(hungKg / massKg)) < Math.log(1.6);
}

function restOfLoad(
  { readFromTipM, readAtClamp }: PlannedLoad,
  { test, readings }: TestRows,
  options: PlanRowsOptions,
): Change[] {
  const { system, newRowId } = options;
  const isThere = (fromTipM: number) =>
    readings.some((row) => Math.abs((siOf(row, 'fromTip') ?? -1) - fromTipM) < samePlaceM);
  const places = readFromTipM.filter((fromTipM) => !isThere(fromTipM)).map((at) => onTape(at, system));
  const atClamp = readAtClamp && !readings.some((row) => flagOf(row, 'atClamp'));
  return [...places, ...(atClamp ? (['clamp'] as const) : [])].flatMap((place, index) =>
    readingRows(test.id, place, readings.length + index, newRowId),
  );
}

/** How many readings rows of these changes ask for. */
export function readingsAsked(changes: readonly Change[]): number {
  return new Set(changes.filter(({ path }) => path[0] === 'readings').map(({ path }) => path[1])).size;
}
