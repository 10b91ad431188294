import type { ReactNode } from 'react';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { BenchProvider } from '../../read/bench.tsx';
import { type Build, BuildContext, useBuild } from '../../read/build-context.ts';
import { useDocumentOf } from '../../read/document-of.ts';
import { useOpenStore } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import type { DocumentStore } from '../../store/document-store.ts';
import { GuideHelper } from './guide-helper.tsx';
import { SectionHelper } from './section-helper.tsx';
import { RecordedTip, TipHelper } from './tip-helper.tsx';

/** What the damage asks for, worked out from the record where the rod has one. */
export function DamagePart() {
  const ticket = useBuild();
  const { writer } = useShop();
  const broken = textOf(ticket.single('job'), 'broken');
  const build = textOf(ticket.single('about'), 'build');
  if (broken === 'tip') {
    return (
      <Part title="The broken tip" aside="how much is gone, what fits, what moves">
        {build ? (
          <OnRecord id={build} otherwise={<TipHelper ticket={ticket} />}>
            <RecordedTip ticket={ticket} />
          </OnRecord>
        ) : (
          <TipHelper ticket={ticket} />
        )}
        <Caution
          about="broken-tip"
          brief="Eyes covered: splinters. Warm the cement, never the blank."
          source="common practice, no source"
        >
          Splinters of carbon and glass: eye protection on, cut square with a fine saw or a disc over a
          vacuum, sand wet. Warm tip cement, not the blank: above {writer.temperature(80)} to{' '}
          {writer.temperature(90)} its resin suffers, and no open flame near solvents.
        </Caution>
      </Part>
    );
  }
  if (broken === 'guide' || broken === 'wrap') {
    return (
      <Part title={broken === 'guide' ? 'The guide' : 'The wrap'} aside="where, and with which thread">
        {build ? (
          <OnRecord id={build} otherwise={<MatchByEye />}>
            <GuideHelper ticket={ticket} />
          </OnRecord>
        ) : (
          <MatchByEye />
        )}
        <Caution
          about="old-finish"
          brief="Cut on top of the foot only, away from the hand."
          source="common practice, no source"
        >
          Warm the old finish with a hair-dryer. Cut on top of the foot only, with a new blade, away from the
          hand: a nick in the blank breaks it later. Eye protection on, old finish flies.
        </Caution>
      </Part>
    );
  }
  if (broken === 'section') {
    return (
      <Part title="The section" aside="what moves with it, and what has to be measured again">
        {build ? (
          <OnRecord id={build} otherwise={<SectionByEye />}>
            <SectionHelper ticket={ticket} />
          </OnRecord>
        ) : (
          <SectionByEye />
        )}
      </Part>
    );
  }
  return null;
}

/** The build on record beside the ticket: what stands below reads its bench, and still writes the ticket. */
function OnRecord({ id, otherwise, children }: { id: string; otherwise: ReactNode; children: ReactNode }) {
  const opening = useOpenStore(id);
  if (opening.kind === 'open') return <Recorded store={opening.store}>{children}</Recorded>;
  if (opening.kind === 'opening') return <p className="aside">Looking the build up …</p>;
  return (
    <>
      <p className="attention" role="alert">
        The build on record cannot be opened: {opening.reason}. What it knows is missing below.
      </p>
      {otherwise}
    </>
  );
}

function Recorded({ store, children }: { store: DocumentStore; children: ReactNode }) {
  const record: Build = useDocumentOf(store);
  return (
    <BuildContext value={record}>
      <BenchProvider>{children}</BenchProvider>
    </BuildContext>
  );
}

function MatchByEye() {
  return (
    <p>
      No build on record: measure from the tip to the middle of the ring before it comes off, and note both
      wraps. The underside of the old wrap shows the thread’s true colour. Write thread and finish under “What
      was done”, and the next one of this rod is quicker.
    </p>
  );
}

function SectionByEye() {
  return (
    <p>
      No build on record: measure every section and overlap, and each guide from its section’s own ends,
      before the new one is ordered. A section of another blank seldom fits a joint; send the mating one
      along.
    </p>
  );
}
