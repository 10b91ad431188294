import { type ReactNode, useMemo } from 'react';
import type { Finding } from '../../engine/finding.ts';
import { valueAt } from '../../record/document.ts';
import { type Path, pathKey } from '../../record/operation.ts';
import { findField } from '../../record/validate.ts';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { useTroubles } from '../read/troubles.tsx';
import { type FieldPlace, FieldPlaceContext } from './place.ts';

export interface BuildFieldsProps {
  children: ReactNode;
  /** What this step's own checks say, beside those of the bench. */
  findings?: readonly Finding[];
}

/** The fields below show and write the build on the table. */
export function BuildFields({ children, findings }: BuildFieldsProps) {
  const { document, write } = useBuild();
  const troubles = useTroubles();
  const { value: habit } = useShop();
  const place = useMemo<FieldPlace>(
    () => ({
      kind: document.kind,
      value: (path) => valueAt(document, path),
      // An empty field is not wrong, only still to be filled; the line at the top says which is next.
      trouble: (path) =>
        valueAt(document, path) === null
          ? undefined
          : (findings?.find((finding) => finding.path === pathKey(path))?.message ??
            troubles.get(pathKey(path))),
      habit: (path) => (shopKnows(path) ? habit(path) : null),
      write,
    }),
    [document, troubles, findings, habit, write],
  );
  return <FieldPlaceContext value={place}>{children}</FieldPlaceContext>;
}

function shopKnows(path: Path): boolean {
  return typeof findField('shop', path) !== 'string';
}
