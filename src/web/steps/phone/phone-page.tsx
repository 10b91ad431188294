import { useMemo } from 'react';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { readLoadTests } from '../../../record/read-load-tests.ts';
import { BuildProvider } from '../../parts/open-build.tsx';
import { SendingWords } from '../../parts/photo/add-photo.tsx';
import { HowToTakeIt } from '../../parts/photo/how-to-take-it.tsx';
import { useAddPhotos } from '../../parts/photo/use-add-photos.ts';
import { Page } from '../../parts/sheet/page.tsx';
import { SaveBanner } from '../../parts/sheet/save-line.tsx';
import { useBuild } from '../../read/build-context.ts';
import { PictureButton } from './picture-button.tsx';
import '../../parts/photo/photo.css';

/** What the telephone shows: take the picture of one load test, and it is in the build. */
export function PhonePage({ build, test }: { build: string; test: string }) {
  return (
    <BuildProvider id={build}>
      <Phone test={test} />
    </BuildProvider>
  );
}

function Phone({ test }: { test: string }) {
  const build = useBuild();
  const photos = useAddPhotos(test, 'a telephone');
  const { add, sending, added } = photos;
  const found = useMemo(
    () => readLoadTests(build.document).find(({ id }) => id === test),
    [build.document, test],
  );
  if (!found) {
    return (
      <Page title="No such load test">
        <p className="attention">
          This test is not in the build any more. Scan a new code beside the test on the shop’s computer.
        </p>
      </Page>
    );
  }
  const hung = found.hungKg === undefined ? '' : `, ${formatGrams(found.hungKg, 0)}`;
  return (
    <Page title="Picture of a load test" aside={`${build.title}${hung}`}>
      <SaveBanner />
      <div className="phone-page">
        <PictureButton main label="Take a picture" capture onFiles={add} />
        <PictureButton label="Choose one that was taken" onFiles={add} />
        <SendingWords {...photos} />
        {added > 0 && !sending && (
          <p role="status">
            {added === 1 ? 'The picture is' : `${added} pictures are`} in the build, on the shop’s computer
            too. Go on there: tap marks, butt and tip.
          </p>
        )}
        <HowToTakeIt />
      </div>
    </Page>
  );
}
