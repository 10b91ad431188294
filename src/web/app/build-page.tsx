import { useEffect, useRef } from 'react';
import { useLocation } from 'wouter';
import { AlarmBar } from '../parts/alarm-bar.tsx';
import { BuildProvider } from '../parts/open-build.tsx';
import { Page } from '../parts/sheet/page.tsx';
import { SaveBanner } from '../parts/sheet/save-line.tsx';
import { UndoButtons } from '../parts/sheet/undo-buttons.tsx';
import { useBuild } from '../read/build-context.ts';
import { HelpLinks } from './help-links.tsx';
import { Mishap } from './mishap.tsx';
import { StepRail } from './step-rail.tsx';
import { preloadSteps, useStepSheet } from './step-sheets.ts';
import { sheetName, TitleBlock } from './title-block.tsx';

/** One build open on the table, at one of its steps. */
export function BuildPage({ id, step }: { id: string; step: string }) {
  return (
    <BuildProvider id={id}>
      <BuildSheet step={step} />
    </BuildProvider>
  );
}

function BuildSheet({ step }: { step: string }) {
  const build = useBuild();
  useEffect(preloadSteps, []);
  if (step === 'bench') return <BenchSheet />;
  const name = sheetName(step);
  return (
    <Page
      title={build.title}
      step={name}
      aside={build.subtitle}
      beside={
        <div className="sheet-beside screen-only">
          <StepRail build={build.id} current={step} />
          <div className="sheet-hands">
            <HelpLinks step={step} />
            <UndoButtons />
          </div>
        </div>
      }
      foot={<TitleBlock step={step} />}
    >
      <StepHeading name={name} />
      <SaveBanner />
      <AlarmBar />
      <Mishap key={step}>
        <StepInPlace step={step} />
      </Mishap>
    </Page>
  );
}

/** Beside the vice the piece of work stands alone. */
function BenchSheet() {
  const { id, title } = useBuild();
  return (
    <Page title={title} step="At the bench" bare={`/builds/${id}/plan`}>
      <SaveBanner />
      <AlarmBar />
      <Mishap>
        <StepInPlace step="bench" />
      </Mishap>
    </Page>
  );
}

function StepInPlace({ step }: { step: string }) {
  const found = useStepSheet(step);
  if (found.kind === 'open') return <found.Sheet />;
  if (found.kind === 'unknown') return <p>This build has no step “{step}”. Pick one above.</p>;
  if (found.kind === 'loading') return <p className="aside">Laying out the sheet …</p>;
  return (
    <div role="alert">
      <h2>This step is not on this device yet</h2>
      <p>
        The server cannot be reached. Leave this page open and check that Fairbend runs and that the network
        is there: the step then opens by itself. What you entered is kept in this browser; steps you opened
        before go on working.
      </p>
    </div>
  );
}

/**
 * Says which step is at hand, to a reader that speaks. Whoever goes on to another step or screen lands here, at the
 * top of the sheet, and not on a link that is gone.
 */
function StepHeading({ name }: { name: string }) {
  const [path] = useLocation();
  const heading = useRef<HTMLHeadingElement>(null);
  const before = useRef(path);
  useEffect(() => {
    if (before.current === path) return;
    before.current = path;
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, [path]);
  return (
    <h2 ref={heading} tabIndex={-1} className="visually-hidden">
      {name}
    </h2>
  );
}
