import { rows } from './document.ts';
import type { Change, DocumentState } from './operation.ts';
import { pathOf, rowChanges } from './operation.ts';
import type { FieldValue } from './schema.ts';

/**
 * The values a build begins with that repeats another on a new blank. What was chosen holds: rod, handle, guides, wraps,
 * finish, limits, prices, the protocol of the readings. What belongs to the old blank or the old rod does not: lengths,
 * diameters, masses, readings, marks, the builder's word that something was checked, prints, pictures, lots, dates.
 * The old marks become the start, so that the layout says what moves.
 */
export function againChanges(state: DocumentState, from: { id: string; title: string }): Change[] {
  const gone = goneRows(state);
  const kept = [...state.cells].flatMap(([key, cell]): Change[] => {
    const path = pathOf(key);
    const [collection, row, field] = path;
    if (cell.value === null || gone.has(`${collection}/${row}`)) return [];
    return holds(collection, field) ? [{ path, value: cell.value }] : [];
  });
  return [
    ...kept,
    ...startOfOldMarks(state),
    { path: ['about', '-', 'title'], value: from.title },
    { path: ['about', '-', 'againFrom'], value: from.id },
  ];
}

/** Collections that hold, and the fields of them that do not. A collection that is not named does not hold. */
const whatHolds: Record<string, { but: readonly string[] } | { only: readonly string[] }> = {
  about: { only: ['customer', 'rodKind', 'lineWeight', 'note'] },
  blank: { only: ['label', 'series', 'withSeries', 'material', 'strainCautionPercent', 'strainStopPercent'] },
  sections: { only: ['order', 'name', 'part', 'joint'] },
  setups: { but: ['turned', 'gone'] },
  tests: { but: ['sag', 'gone'] },
  readings: { only: ['order', 'test', 'fromTip', 'atClamp'] },
  flagChecks: { only: ['order', 'setup', 'fromTip'] },
  handle: { but: ['seatOnLine', 'guidesOnLine', 'tipTopOnLine', 'dryFitted', 'gluedAt', 'tipTopGluedAt'] },
  wraps: { but: [] },
  finish: { but: ['guidesChecked', 'wrapsChecked', 'levelChecked', 'dustFree', 'roomC'] },
  sorting: { but: [] },
  guides: { but: ['station', 'pinned', 'gone'] },
  layout: {
    but: ['startKind', 'startText', 'startUnit', 'startFrom', 'startCount', 'startFirst', 'startStripping'],
  },
  ladder: { but: ['gone'] },
  tags: { but: ['gone'] },
  quote: {
    only: [
      'wish',
      'hourlyRate',
      'overheadPercent',
      'reservePercent',
      'depositPercent',
      'taxPercent',
      'validDays',
      'leadWeeks',
      'note',
    ],
  },
  quoteLines: { but: ['gone'] },
  quoteHours: { but: ['gone'] },
  inspection: { only: ['order', 'point', 'item', 'tolerance'] },
};

function holds(collection: string, field: string): boolean {
  const rule = Object.hasOwn(whatHolds, collection) ? whatHolds[collection] : undefined;
  if (!rule) return false;
  return 'only' in rule ? rule.only.includes(field) : !rule.but.includes(field);
}

function goneRows(state: DocumentState): Set<string> {
  const gone = [...state.cells].filter(([key, { value }]) => value === true && key.endsWith('/gone'));
  return new Set(gone.map(([key]) => key.slice(0, -'/gone'.length)));
}

function startOfOldMarks(state: DocumentState): Change[] {
  const stations = rows(state, 'guides')
    .filter((row) => row.fields.kind !== 'tip-top')
    .map((row) => row.fields.station);
  const marks = stations.filter(isQuantity);
  if (marks.length < 2 || marks.length < stations.length) return keptStart(state);
  const value = marks.map(({ si }) => `${Number((si * 1000).toFixed(1))} mm`).join('\n');
  return rowChanges('layout', '-', { startKind: 'own', startText: value, startUnit: 'mm', startFrom: 'tip' });
}

/** Without marks of its own the old build's start is the new one's too. */
function keptStart(state: DocumentState): Change[] {
  return [...state.cells]
    .filter(([key, { value }]) => key.startsWith('layout/-/start') && value !== null)
    .map(([key, { value }]) => ({ path: pathOf(key), value }));
}

function isQuantity(value: FieldValue | undefined): value is { si: number; text: string } {
  return value !== null && typeof value === 'object';
}
