import type { ReadingOption } from '../../../engine/sureness/reading-option.ts';
import { spanSigmaM } from '../../../engine/sureness/span-offers.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { quantityOf, siOf, textOf } from '../../read/values.ts';
import { type Edge, loadRows, onTape, type PlanRowsOptions, planRows, readingRows } from './plan-rows.ts';
import type { SetupRows, TestRows } from './reading-rows.ts';

interface LaidOut {
  /** Empty where the rows stand already. */
  changes: Change[];
  /** Path key of the first drop to be read. */
  at: string;
}

/** The rows of a reading that was proposed, to be filled; `last` is the set-up that was read last. */
export function layOutReading(
  option: ReadingOption,
  setups: readonly SetupRows[],
  last: SetupRows | undefined,
  options: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  return option.standing !== undefined && last
    ? inStanding(option, last, options)
    : asNewSetup(option, setups, last?.setup, options);
}

/** A count of swings, to be filled where the swings are. */
export function layOutCount(
  { clampFromTipM }: ReadingOption,
  order: number,
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  const id = newRowId();
  const changes = rowChanges('swings', id, {
    order: order + 1,
    rod: 'bare',
    clampFromTip: onTape(clampFromTipM, system),
  });
  return { changes, at: `swings/${id}/counted` };
}

/** A stretch on two supports, with a sag to be read under every weight. */
export function layOutSpan(
  { supportsFromTipM = [0, 0], loads }: ReadingOption,
  order: number,
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  const id = newRowId();
  const at = onTape(loads[0].readFromTipM[0], system);
  const tests = loads.map(({ massKg }, index) => ({ id: newRowId(), index, massKg }));
  const changes = [
    ...rowChanges('setups', id, {
      order,
      kind: 'span',
      place: 'supports-at',
      supportTipSide: onTape(supportsFromTipM[0], system),
      supportButtSide: onTape(supportsFromTipM[1], system),
      loadFromTip: at,
      sigma: { si: spanSigmaM, text: `${1000 * spanSigmaM} mm` },
    }),
    ...tests.flatMap((test): Change[] =>
      rowChanges('tests', test.id, {
        order: test.index,
        setup: id,
        hung: { si: test.massKg, text: formatGrams(test.massKg) },
      }),
    ),
  ];
  return { changes, at: `tests/${tests[0].id}/sag` };
}

/** The order of a set-up behind all others. */
export function nextOrder(setups: readonly SetupRows[]): number {
  return 1 + Math.max(-1, ...setups.map(({ setup }) => Number(setup.fields.order ?? 0)));
}

function asNewSetup(
  { clampFromTipM, turnedRad, loads }: ReadingOption,
  setups: readonly SetupRows[],
  last: Row | undefined,
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  const before = last && siOf(last, 'turned');
  const turn = (before ?? 0) + turnedRad;
  const stand = turnedRad === 0 ? 'clamp-at' : 'clamp-at-turned';
  const changes = planRows(
    { setups: [{ stand, clampFromTipM, loads }] },
    {
      system,
      newRowId,
      edge: ((last && textOf(last, 'edge')) ?? 'axis') as Edge,
      clampHeight: (last && quantityOf(last.fields.clampHeight)) ?? null,
      sigma: (last && quantityOf(last.fields.sigma)) ?? undefined,
      turned: turn === 0 ? undefined : degrees(turn),
      firstOrder: nextOrder(setups),
    },
  );
  return { changes, at: firstDrop(changes) };
}

function degrees(turnRad: number): QuantityValue {
  const whole = Math.round((turnRad * 180) / Math.PI) % 360;
  return { si: (whole * Math.PI) / 180, text: `${whole}°` };
}

/** Under a weight that stands in the set-up its missing stations are added; another weight is added whole. */
function inStanding(
  { loads }: ReadingOption,
  { setup, tests }: SetupRows,
  options: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  const parts = loads.map(({ massKg, readFromTipM }, index): LaidOut => {
    const known = tests.findLast(({ test }) => Math.abs((siOf(test, 'hung') ?? 0) - massKg) < 1e-6);
    if (known) return underKnown(known, readFromTipM, options);
    const changes = loadRows(setup.id, { massKg, readFromTipM }, tests.length + index, options);
    return { changes, at: firstDrop(changes) };
  });
  return { changes: parts.flatMap(({ changes }) => changes), at: parts[0].at };
}

function underKnown(
  { test, readings }: TestRows,
  readFromTipM: readonly number[],
  { system, newRowId }: Pick<PlanRowsOptions, 'system' | 'newRowId'>,
): LaidOut {
  const places = readFromTipM.map((at) => {
    const open = readings.find(
      (row) => siOf(row, 'drop') === undefined && Math.abs((siOf(row, 'fromTip') ?? -1) - at) < 0.007,
    );
    return { at, open };
  });
  const wanted = places.filter(({ open }) => !open);
  const changes = wanted.flatMap(({ at }, index) => {
    const station = readings.find((row) => Math.abs((siOf(row, 'fromTip') ?? -1) - at) < 1e-6)?.fields
      .fromTip;
    const fromTip = quantityOf(station) ?? onTape(at, system);
    return readingRows(test.id, fromTip, readings.length + index, newRowId);
  });
  const open = places.find((place) => place.open)?.open;
  return { changes, at: open ? `readings/${open.id}/drop` : firstDrop(changes) };
}

function firstDrop(changes: readonly Change[]): string {
  const [, id] = changes.find(({ path }) => path[0] === 'readings')?.path ?? [];
  return `readings/${id}/drop`;
}
