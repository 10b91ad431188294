/** The shop's rack: its rows, and how one of them becomes a guide of a build. */

import type { RingOnHand } from '../engine/flow/reel-line-question.ts';
import { guideKindIds, rackKindIds } from '../engine/kinds/guide-kinds.ts';
import type { GuideNumbers } from '../engine/kinds/guide-sizes.ts';
import { guideKindName, guideKindOf, guideNumbers } from '../engine/kinds/guides.ts';
import { type Row, sameValue } from './document.ts';
import type { Change } from './operation.ts';
import { oneOf } from './read-values.ts';
import type { FieldValue } from './schema.ts';

/** What a rack's row and a build's guide have in common. */
export const guideNumberFields = [
  'size',
  'wire',
  'ringHeight',
  'foot',
  'mass',
  'opening',
  'footWidth',
  'feet',
  'oneFoot',
] as const;
export type GuideNumberField = (typeof guideNumberFields)[number];

/** A guide of the build as the rack has it. What the rack leaves open is left open: it stays typical. */
export function takeFromRack(rack: Row, guide: string): Change[] {
  const put = (field: string, value: FieldValue): Change => ({ path: ['guides', guide, field], value });
  return [
    put('kind', rack.fields.kind ?? null),
    put('fromRack', rack.id),
    ...guideNumberFields.map((field) => put(field, rack.fields[field] ?? null)),
  ];
}

/** The keeper of the build as the rack has it. */
export function takeKeeper(rack: Row): Change[] {
  const put = (field: string, value: FieldValue | undefined): Change => ({
    path: ['handle', '-', field],
    value: value ?? null,
  });
  return [
    put('keeperLength', rack.fields.foot),
    put('keeperFeet', rack.fields.feet),
    put('keeperMass', rack.fields.mass),
  ];
}

export type Origin = 'measured' | 'stated' | 'typed here' | 'typical';

/** Where a number of a build's guide comes from: its rack's word on it, this build alone, or the size's usual one. */
export function originOf(guide: Row, field: GuideNumberField, rack: Row | undefined): Origin {
  const value = guide.fields[field] ?? null;
  if (value === null) return 'typical';
  if (!rack || !sameValue(rack.fields[field] ?? null, value)) return 'typed here';
  return rack.fields.numbersAre === 'stated' ? 'stated' : 'measured';
}

/** Numbers that the rack says differently by now; the build keeps its own until it is taken from the rack again. */
export function changedInRack(guide: Row, rack: Row): GuideNumberField[] {
  return guideNumberFields.filter(
    (field) => !sameValue(rack.fields[field] ?? null, guide.fields[field] ?? null),
  );
}

/** What a rack's row is taken to be where its numbers are not known; empty for a size its kind does not know. */
export function typicalOfRack(rack: Row): Partial<GuideNumbers> {
  const kind = oneOf(textIn(rack, 'kind'), rackKindIds);
  return (kind && guideNumbers(kind, textIn(rack, 'size') ?? '')) ?? {};
}

/** `snake 1/0, light wire`. */
export function rackName(rack: Row): string {
  const words = [guideKindName(textIn(rack, 'kind') ?? 'guide'), textIn(rack, 'size') ?? ''].join(' ').trim();
  const name = textIn(rack, 'name');
  return name ? `${words}, ${name}` : words;
}

/** Guides of the build beyond what lies in the drawer; rows without a count are not judged. */
export function rackShortages(
  guides: readonly Row[],
  rack: readonly Row[],
): { rack: Row; wanted: number; onHand: number }[] {
  return rack.flatMap((row) => {
    const onHand = row.fields.onHand;
    const wanted = guides.filter(({ fields }) => fields.fromRack === row.id).length;
    return typeof onHand === 'number' && wanted > onHand ? [{ rack: row, wanted, onHand }] : [];
  });
}

function textIn({ fields }: Row, field: string): string | undefined {
  const value = fields[field];
  return typeof value === 'string' && value.trim() !== '' ? value : undefined;
}

/** Rings in the drawers that a line could run through, with the rack's own numbers before typical ones. */
export function ringsOfRack(rack: readonly Row[]): RingOnHand[] {
  return rack.flatMap((row) => {
    const kind = oneOf(textIn(row, 'kind'), guideKindIds);
    if (!kind || guideKindOf(kind).place !== 'line') return [];
    const size = textIn(row, 'size') ?? '';
    const typical = guideNumbers(kind, size);
    const ringHeightM = siIn(row, 'ringHeight') ?? typical?.ringHeightM;
    const insideM = siIn(row, 'opening') ?? typical?.insideM;
    return ringHeightM === undefined || insideM === undefined ? [] : [{ kind, size, ringHeightM, insideM }];
  });
}

function siIn({ fields }: Row, field: string): number | undefined {
  const value = fields[field];
  return value !== null && typeof value === 'object' ? value.si : undefined;
}
