import type { Opening } from '../../read/open-store.ts';
import { Page } from './page.tsx';

interface OpeningPageProps {
  what: 'build' | 'repair';
  opening: Exclude<Opening, { kind: 'open' }>;
}

/** In a sheet's place until its record is open, or where it cannot be opened. */
export function OpeningPage({ what, opening }: OpeningPageProps) {
  if (opening.kind === 'opening') return <Page title={`Opening the ${what} …`}>{null}</Page>;
  return (
    <Page title={`This ${what} cannot be opened`}>
      <p role="alert">{opening.reason}. Nothing was changed. Try again, or pick another from the shelf.</p>
      <button type="button" onClick={opening.retry}>
        Try again
      </button>
    </Page>
  );
}
