/** Other rings, and another place of the first one, as changes of the record's rows. */

import type { RingOnHand } from '../../../engine/flow/reel-line-question.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { guideNumberFields, takeFromRack } from '../../../record/rack.ts';
import { keptMark } from '../../../words/tape.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { type MarkWriting, markChanges } from './mark-changes.ts';

export interface RingWriting extends MarkWriting {
  model: SheetModel;
  rack: readonly Row[];
}

/** Guides, by their place from the tip, that become these rings; what was measured on the old ring goes with it. */
export function ringChanges(rings: ReadonlyMap<number, RingOnHand>, writing: RingWriting): Change[] {
  const { choices } = writing.model;
  const recorded = choices.guides.every(({ id }) => id !== undefined);
  if (!recorded) return newRows(rings, writing);
  return [...rings].flatMap(([guide, ring]) => {
    const { id, kind, size } = choices.guides[guide];
    if (id === undefined || guideName({ kind, size }) === guideName(ring)) return [];
    return ringOfRow(id, ring, writing.rack);
  });
}

/** The first guide from the reel at this place: its own mark, or before there are marks where the start ends. */
export function firstRingChanges(fromTipM: number, ring: RingOnHand, writing: RingWriting): Change[] {
  const { model, system } = writing;
  const last = model.choices.guides.length - 1;
  const changed = ringChanges(new Map([[last, ring]]), writing);
  const row = model.choices.guides[last].id;
  const value = keptMark(fromTipM, system);
  if (model.marksAre === 'own' && row !== undefined)
    return [...changed, { path: ['guides', row, 'station'], value }];
  return [...changed, { path: ['layout', '-', 'startStripping'], value }];
}

function ringOfRow(row: string, ring: RingOnHand, rack: readonly Row[]): Change[] {
  const drawer = rack.find(({ fields }) => fields.kind === ring.kind && fields.size === ring.size);
  if (drawer) return takeFromRack(drawer, row);
  const cleared = guideNumberFields.filter((field) => field !== 'size');
  return [
    { path: ['guides', row, 'kind'], value: ring.kind },
    { path: ['guides', row, 'size'], value: ring.size },
    ...['fromRack', ...cleared].map((field): Change => ({ path: ['guides', row, field], value: null })),
  ];
}

/** Guides that stood for common practice become rows of the record, without marks of their own. */
function newRows(rings: ReadonlyMap<number, RingOnHand>, writing: RingWriting): Change[] {
  const { choices, field } = writing.model;
  const guides = choices.guides.map((guide, i) => ({ ...guide, ...rings.get(i) }));
  const changes = markChanges(field.fromTipM, { ...writing, choices: { ...choices, guides } });
  return changes.filter(({ path }) => path[2] !== 'station');
}
