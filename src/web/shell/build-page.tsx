import { type ComponentType, lazy, Suspense } from 'react';
import { BlankStep } from '../blank/blank-step.tsx';
import { AlarmBar } from '../finish/alarm-bar.tsx';
import { FinishStep } from '../finish/finish-step.tsx';
import { GuidesStep } from '../guides/guides-step.tsx';
import { HandleStep } from '../handle/handle-step.tsx';
import { HistorySheet } from '../history/history-sheet.tsx';
import { LoadTestStep } from '../load-test/load-test-step.tsx';
import { MarksStep } from '../marks/marks-step.tsx';
import { PlanStep } from '../plan/plan-step.tsx';
import { BuildProvider, useBuild } from '../read/build.tsx';
import { WrapsStep } from '../wraps/wraps-step.tsx';
import { Mishap } from './mishap.tsx';
import { Page } from './page.tsx';
import { SaveBanner } from './save-line.tsx';
import { StepRail } from './step-rail.tsx';
import { TitleBlock } from './title-block.tsx';
import { UndoButtons } from './undo-buttons.tsx';

/** The drawings and the layout's figures are the heaviest part; they come when they are asked for. */
const LayoutStep = lazy(async () => ({ default: (await import('../layout/layout-step.tsx')).LayoutStep }));

const sheets: Record<string, ComponentType> = {
  blank: BlankStep,
  handle: HandleStep,
  layout: LayoutStep,
  marks: MarksStep,
  'load-test': LoadTestStep,
  guides: GuidesStep,
  wraps: WrapsStep,
  finish: FinishStep,
  plan: PlanStep,
  history: HistorySheet,
};

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
  const Sheet = sheets[step];
  return (
    <Page
      title={build.title}
      aside={build.subtitle}
      beside={
        <div className="sheet-beside screen-only">
          <StepRail build={build.id} current={step} />
          <UndoButtons />
        </div>
      }
      foot={<TitleBlock step={step} />}
    >
      <SaveBanner />
      <AlarmBar />
      <Mishap key={step}>
        <Suspense fallback={<p className="aside">Laying out the sheet …</p>}>
          {Sheet ? <Sheet /> : <p>This build has no step “{step}”. Pick one above.</p>}
        </Suspense>
      </Mishap>
    </Page>
  );
}
