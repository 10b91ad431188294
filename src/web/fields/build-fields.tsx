import { type ReactNode, useMemo } from 'react';
import type { Finding } from '../../engine/finding.ts';
import { valueAt } from '../../record/document.ts';
import { type Path, pathKey } from '../../record/operation.ts';
import type { DocumentKind, FieldValue } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { useBuild } from '../read/build-context.ts';
import { useShop } from '../read/shop.tsx';
import { useTroubles } from '../read/troubles.tsx';
import { useSentence } from '../read/use-sentence.ts';
import { type FieldPlace, FieldPlaceContext } from './place.ts';

interface BuildFieldsProps {
  children: ReactNode;
  /** What this step's own checks say, beside those of the bench. */
  findings?: readonly (Finding & { severity?: 'stop' | 'doubt' })[];
}

/** The fields below show and write the build on the table. */
export function BuildFields({ children, findings }: BuildFieldsProps) {
  const sentence = useSentence();
  const { document, write } = useBuild();
  const troubles = useTroubles();
  const { value: habit } = useShop();
  const place = useMemo<FieldPlace>(
    () => ({
      kind: document.kind,
      value: (path) => valueAt(document, path),
      // An empty field is not wrong, only still to be filled, unless what stands in for it cannot be.
      trouble: (path) => {
        const found = findings?.find((finding) => finding.path === pathKey(path));
        if (valueAt(document, path) !== null) return found ? sentence(found) : troubles.get(pathKey(path));
        const standsIn = habitAt(path, habit) ?? usualOf(document.kind, path);
        return found && (standsIn !== null || found.severity === 'stop') ? sentence(found) : undefined;
      },
      habit: (path) => habitAt(path, habit),
      write,
    }),
    [document, troubles, findings, habit, write, sentence],
  );
  return <FieldPlaceContext value={place}>{children}</FieldPlaceContext>;
}

function usualOf(kind: DocumentKind, path: Path): string | number | null {
  const field = findField(kind, path);
  return typeof field === 'string' ? null : (field.usual ?? null);
}

/** What the shop holds for the same field; its rates are what quotes begin from. */
function habitAt([collection, row, field]: Path, habit: (path: Path) => FieldValue): FieldValue {
  const path: Path = [collection === 'quote' ? 'rates' : collection, row, field];
  return typeof findField('shop', path) === 'string' ? null : habit(path);
}
