import { createContext, useContext } from 'react';
import type { Change, Objection, Path } from '../../record/operation.ts';
import type { DocumentKind, FieldValue } from '../../record/schema.ts';
import type { DeedId } from '../../words/deeds.ts';

/** The document whose values the fields below it show and write: the build, or the shop's own. */
export interface FieldPlace {
  kind: DocumentKind;
  value(path: Path): FieldValue;
  /** What the checks have to say about a value that is kept. */
  trouble(path: Path): string | undefined;
  /** What the shop does where this build says nothing. */
  habit?(path: Path): FieldValue;
  write(deed: DeedId, changes: readonly Change[]): Objection[];
}

export const FieldPlaceContext = createContext<FieldPlace | undefined>(undefined);

export function useFieldPlace(): FieldPlace {
  const place = useContext(FieldPlaceContext);
  if (!place) throw new Error('a field needs a FieldPlaceContext above it');
  return place;
}
