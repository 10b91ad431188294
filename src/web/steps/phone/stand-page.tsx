import { useMemo } from 'react';
import { readStands } from '../../../record/read-load-tests.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { BuildProvider } from '../../parts/open-build.tsx';
import { Page } from '../../parts/sheet/page.tsx';
import { SaveBanner } from '../../parts/sheet/save-line.tsx';
import { StandCard } from '../../parts/stand/stand-card.tsx';
import { useBuild } from '../../read/build-context.ts';
import { TakeWithCamera } from './take-with-camera.tsx';
import '../../style/blank.css';
import './camera.css';

/** What the telephone shows to measure a blank by pictures: what to hang, one button, the curve, the next. */
export function StandPage({ build, stand }: { build: string; stand: string }) {
  return (
    <BuildProvider id={build}>
      <StandOnPhone stand={stand} />
    </BuildProvider>
  );
}

function StandOnPhone({ stand }: { stand: string }) {
  const { document, title } = useBuild();
  const found = useMemo(() => readStands(document).find(({ id }) => id === stand), [document, stand]);
  if (!found) {
    return (
      <Page title="No such pictures">
        <p className="attention">
          These pictures are not in the build any more. Scan a new code on the shop’s computer, at Blank,
          Readings.
        </p>
      </Page>
    );
  }
  return (
    <Page title="Pictures of the blank" aside={title}>
      <SaveBanner />
      <BuildFields>
        <StandCard stand={found} takenBy="a telephone" take={(how) => <TakeWithCamera {...how} />} />
      </BuildFields>
    </Page>
  );
}
