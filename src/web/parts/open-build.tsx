import type { ReactNode } from 'react';
import { BenchProvider } from '../read/bench.tsx';
import { BuildContext } from '../read/build-context.ts';
import { useDocumentOf } from '../read/document-of.ts';
import { useOpenStore } from '../read/open-store.ts';
import type { DocumentStore } from '../store/document-store.ts';
import { OpeningPage } from './sheet/opening-page.tsx';

/** Opens a build and gives it to everything below. */
export function BuildProvider({ id, children }: { id: string; children: ReactNode }) {
  const opening = useOpenStore(id);
  if (opening.kind === 'open') return <OpenBuild store={opening.store}>{children}</OpenBuild>;
  return <OpeningPage what="build" opening={opening} />;
}

function OpenBuild({ store, children }: { store: DocumentStore; children: ReactNode }) {
  const build = useDocumentOf(store);
  return (
    <BuildContext value={build}>
      <BenchProvider>{children}</BenchProvider>
    </BuildContext>
  );
}
