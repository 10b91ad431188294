/** Another number of guides as changes of the record's rows. */
import type { Choices, ChosenGuide } from '../../../engine/flow/choices.ts';
import { takenGuides, withGuideCount } from '../../../engine/flow/guide-count.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { keptMark, keptTurn } from '../../../words/tape.ts';

interface GuideRows {
  /** Of the guides, as they stand in the record. */
  rows: readonly Row[];
  newRowId(): string;
}

/** One guide more, halfway in the longest interval: always on the tip's side of the stripping guide. */
export function addedGuide({ guides }: Choices, { rows, newRowId }: GuideRows): Change[] {
  const marks = guides.map(({ stationM }) => stationM ?? 0);
  let widest = 1;
  marks.forEach((mark, i) => {
    if (i > 0 && mark - marks[i - 1] > marks[widest] - marks[widest - 1]) widest = i;
  });
  const fromTipM = Math.round(500 * (marks[widest] + marks[widest - 1])) / 1000;
  const row = newRowId();
  const { kind, size } = guides[widest - 1];
  return [
    ...orderBefore(widest, row, guides, rows),
    ...rowChanges('guides', row, {
      kind,
      size,
      station: { si: fromTipM, text: `${Math.round(fromTipM * 1000)} mm` },
    }),
  ];
}

/** Puts a row between its neighbours' own orders; where these leave no room, all are numbered anew. */
function orderBefore(
  place: number,
  row: string,
  guides: readonly ChosenGuide[],
  rows: readonly Row[],
): Change[] {
  const orderOf = (guide: ChosenGuide) => rows.find(({ id }) => id === guide.id)?.fields.order;
  const [before, after] = [orderOf(guides[place - 1]), orderOf(guides[place])];
  if (typeof before === 'number' && typeof after === 'number') {
    const between = (before + after) / 2;
    if (before < between && between < after) return [{ path: ['guides', row, 'order'], value: between }];
  }
  return guides
    .map(({ id }) => id)
    .toSpliced(place, 0, row)
    .flatMap((id, i) => (id === undefined ? [] : { path: ['guides', id, 'order'], value: i + 1 }));
}

/**
 * So many guides at these marks. Rows that stay keep what was measured on them; a guide that stands in twice lends
 * its kind, size and measures to a new row. Pins are taken off: everything was placed anew.
 */
export function countChanges(
  choices: Choices,
  fromTipM: readonly number[],
  { rows, newRowId, system }: GuideRows & { system: UnitSystem },
): Change[] {
  const { guides } = choices;
  const taken = takenGuides(guides, fromTipM.length);
  const anew = withGuideCount(choices, fromTipM.length).guides;
  const laid = taken.flatMap((index, place) => {
    const guide = guides[index];
    const kept = taken.indexOf(index) === place ? guide.id : undefined;
    const row = kept ?? newRowId();
    return [
      { path: ['guides', row, 'order'], value: place + 1 },
      { path: ['guides', row, 'station'], value: keptMark(fromTipM[place], system) },
      ...(kept === undefined ? likeGuide(row, guide, rows) : unpinned(row, guide)),
      ...turned(row, kept === undefined ? undefined : guide.fromTopRad, anew[place].fromTopRad),
    ] satisfies Change[];
  });
  const left = guides.flatMap(({ id }, index) => (taken.includes(index) || id === undefined ? [] : id));
  return [...laid, ...left.map((id): Change => ({ path: ['guides', id, 'gone'], value: true }))];
}

/** A spiral turns by places from the reel: another guide may stand at each of them now. */
function turned(row: string, beforeRad: number | undefined, fromTopRad: number | undefined): Change[] {
  if (beforeRad === fromTopRad) return [];
  return [{ path: ['guides', row, 'around'], value: fromTopRad === undefined ? null : keptTurn(fromTopRad) }];
}

function unpinned(row: string, { pinned }: ChosenGuide): Change[] {
  return pinned ? [{ path: ['guides', row, 'pinned'], value: null }] : [];
}

function likeGuide(row: string, { id, kind, size }: ChosenGuide, rows: readonly Row[]): Change[] {
  const measured = rows.find((one) => one.id === id)?.fields ?? {};
  return [
    { path: ['guides', row, 'kind'], value: kind },
    { path: ['guides', row, 'size'], value: size },
    ...['ringHeight', 'ringBeside', 'foot', 'mass'].flatMap((field): Change[] =>
      measured[field] === undefined ? [] : [{ path: ['guides', row, field], value: measured[field] }],
    ),
  ];
}
