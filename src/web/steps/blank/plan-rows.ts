import { formatInches } from '../../../engine/units/format-inches.ts';
import { formatGrams, formatMm } from '../../../engine/units/format-quantity.ts';
import { readQuantity } from '../../../engine/units/read-quantity.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { SetupPlace } from '../../../record/fields/readings.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { QuantityValue } from '../../../record/schema.ts';

export type Edge = 'axis' | 'upper' | 'lower';

export interface PlanRowsOptions {
  system: UnitSystem;
  edge: Edge;
  clampHeight: QuantityValue | null;
  /** Left out: as common. */
  sigma?: QuantityValue;
  turned?: QuantityValue;
  /** The place in the order of the first set-up. */
  firstOrder: number;
  newRowId(): string;
}

/** What is laid out of a set-up. */
export interface PlannedSetup {
  stand: SetupPlace;
  clampFromTipM: number;
  loads: readonly PlannedLoad[];
}
export interface PlannedLoad {
  massKg: number;
  readFromTipM: readonly number[];
  readAtClamp?: boolean;
}

/** The rows of a protocol: set-ups, weights and stations to be filled with drops; nothing is read yet. */
export function planRows(protocol: { setups: readonly PlannedSetup[] }, options: PlanRowsOptions): Change[] {
  return protocol.setups.flatMap((setup, index) => setupRows(setup, options.firstOrder + index, options));
}

function setupRows(setup: PlannedSetup, order: number, options: PlanRowsOptions): Change[] {
  const { system, edge, clampHeight, sigma, turned, newRowId } = options;
  const id = newRowId();
  const put = (field: string, value: Change['value']): Change => ({ path: ['setups', id, field], value });
  return [
    ...rowChanges('setups', id, {
      order,
      place: setup.stand,
      kind: 'clamp',
      nominalAngle: { si: 0, text: '0°' },
      clampFromTip: onTape(setup.clampFromTipM, system),
      edge,
    }),
    ...(clampHeight ? [put('clampHeight', clampHeight)] : []),
    ...(sigma ? [put('sigma', sigma)] : []),
    ...(turned ? [put('turned', turned)] : []),
    ...setup.loads.flatMap((load, index) => loadRows(id, load, index, options)),
    ...flagCheckRows(id, flagsReadTwice(setup.loads), options),
  ];
}

/** Of a set-up that is read at its clamp too: a flag, not the tip. */
function flagsReadTwice(loads: readonly PlannedLoad[]): number[] {
  if (!loads.some(({ readAtClamp }) => readAtClamp)) return [];
  return [...new Set(loads.flatMap(({ readFromTipM }) => readFromTipM))].filter((flag) => flag > 0);
}

function flagCheckRows(
  setup: string,
  flags: readonly number[],
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): Change[] {
  return flags.flatMap((flag, order) => flagCheckRow(setup, onTape(flag, system), order, newRowId));
}

/** A second measurement of a flag, still to be taken. */
export function flagCheckRow(
  setup: string,
  fromTip: QuantityValue,
  order: number,
  newRowId: () => string,
): Change[] {
  const id = newRowId();
  return rowChanges('flagChecks', id, { order, setup, fromTip });
}

/** A weight of a set-up, with the readings to be taken under it. */
export function loadRows(
  setup: string,
  load: PlannedLoad,
  order: number,
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): Change[] {
  const id = newRowId();
  return [
    ...rowChanges('tests', id, {
      order,
      setup,
      hung: { si: load.massKg, text: formatGrams(load.massKg) },
      hungFromTip: onTape(0, system),
    }),
    ...load.readFromTipM.flatMap((fromTipM, index) =>
      readingRows(id, onTape(fromTipM, system), index, newRowId),
    ),
    ...(load.readAtClamp ? readingRows(id, 'clamp', load.readFromTipM.length, newRowId) : []),
  ];
}

/** A reading still to be taken. */
export function readingRows(
  test: string,
  place: QuantityValue | 'clamp',
  order: number,
  newRowId: () => string,
): Change[] {
  const id = newRowId();
  return [
    { path: ['readings', id, 'order'], value: order },
    { path: ['readings', id, 'test'], value: test },
    place === 'clamp'
      ? { path: ['readings', id, 'atClamp'], value: true }
      : { path: ['readings', id, 'fromTip'], value: place },
  ];
}

/** The nearest place that is quickly found on a tape: half an inch, or 5 mm. */
export function onTape(lengthM: number, system: UnitSystem): QuantityValue {
  const shown =
    system === 'inch'
      ? formatInches(lengthM, { denominator: 2 }).text.replace('⁄', '/')
      : formatMm(Math.round(lengthM * 200) / 200, 0);
  const read = readQuantity(shown, { dimension: 'length', system });
  if (!read.ok) throw new Error(`${shown} does not read back as a length`);
  return { si: read.si, text: shown };
}
