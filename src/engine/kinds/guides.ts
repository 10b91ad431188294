/** A guide, and what its kind and size say about it. */
import { type GuideKind, type GuideKindDeclaration, guideKinds, type RackKind } from './guide-kinds.ts';
import type { GuideNumbers } from './guide-sizes.ts';

export function guideKindOf(id: RackKind): GuideKindDeclaration {
  return guideKinds.find((kind) => kind.id === id) as GuideKindDeclaration;
}

/** For a screen's list: those that stand along the blank, or everything that a rack may hold. */
export function guideKindOptions(of: 'line' | 'rack'): { value: string; name: string }[] {
  const offered = guideKinds.filter(({ place }) => of === 'rack' || place === 'line');
  return offered.map(({ id, name }) => ({ value: id, name }));
}

/** Of the sizes that the kind names, the one whose ring stands nearest to this height. */
export function typicalByHeight(kind: GuideKind, ringHeightM: number): Guide {
  const { listed } = guideKindOf(kind);
  const away = (size: string) => Math.abs((typicalGuide(kind, size) as Guide).ringHeightM - ringHeightM);
  const nearest = listed.reduce((best, size) => (away(size) < away(best) ? size : best));
  return typicalGuide(kind, nearest) as Guide;
}

/** A word that is no kind stays as it is. */
export function guideKindName(id: string): string {
  return guideKinds.find((kind) => kind.id === id)?.name ?? id;
}

/** `snake 1/0`, `ringed, high frame 25 mm`. */
export function guideName({ kind, size }: { kind: string; size: string }): string {
  return `${guideKindName(kind)} ${size}`.trim();
}

/** `ringed guide, high frame`. */
export function guideInWords(id: RackKind): string {
  const kind = guideKindOf(id);
  return kind.place === 'line' ? kind.name.replace(/^[^,]+/, '$& guide') : kind.name;
}

export interface Guide extends Omit<GuideNumbers, 'insideM' | 'outsideM'> {
  kind: GuideKind;
  size: string;
}

/** Typical numbers of a kind and size (`#1/0`, `12 mm, black`); undefined for a size that the kind does not know. */
export function guideNumbers(kind: RackKind, size: string): GuideNumbers | undefined {
  const plain = size.trim().replace(/^(?:#|no\. ?|size )/i, '');
  return guideKindOf(kind).sizes(plain) ?? guideKindOf(kind).sizes(plain.replace(/,.*$/, ''));
}

export function typicalGuide(kind: GuideKind, size: string): Guide | undefined {
  const numbers = guideNumbers(kind, size);
  if (!numbers) return undefined;
  const { ringHeightM, lengthM, massKg } = numbers;
  return { kind, size, ringHeightM, lengthM, massKg };
}

/** One that stands along the blank and comes on its own: not of the bag, no spare. */
export function isBoughtSingly(id: string | undefined): boolean {
  return guideKinds.some((kind) => kind.id === id && kind.place === 'line' && kind.single);
}
