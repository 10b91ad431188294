import { type ReactNode, useMemo } from 'react';
import { valueAt } from '../../record/document.ts';
import { pathKey } from '../../record/operation.ts';
import { useBuild } from '../read/build.tsx';
import { useTroubles } from '../read/troubles.tsx';
import { type FieldPlace, FieldPlaceContext } from './place.ts';

/** The fields below show and write the build on the table. */
export function BuildFields({ children }: { children: ReactNode }) {
  const { document, write } = useBuild();
  const troubles = useTroubles();
  const place = useMemo<FieldPlace>(
    () => ({
      kind: 'build',
      value: (path) => valueAt(document, path),
      // An empty field is not wrong, only still to be filled; the line at the top says which is next.
      trouble: (path) => (valueAt(document, path) === null ? undefined : troubles.get(pathKey(path))),
      write,
    }),
    [document, troubles, write],
  );
  return <FieldPlaceContext value={place}>{children}</FieldPlaceContext>;
}
