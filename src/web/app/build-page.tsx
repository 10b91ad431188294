import { type ComponentType, lazy, Suspense } from 'react';
import { AlarmBar } from '../parts/alarm-bar.tsx';
import { BuildProvider } from '../parts/open-build.tsx';
import { Page } from '../parts/sheet/page.tsx';
import { SaveBanner } from '../parts/sheet/save-line.tsx';
import { UndoButtons } from '../parts/sheet/undo-buttons.tsx';
import { useBuild } from '../read/build-context.ts';
import { Mishap } from './mishap.tsx';
import { StepRail } from './step-rail.tsx';
import { TitleBlock } from './title-block.tsx';

/** Every step comes in a file of its own when it is asked for, so that the first page is quick. */
const loaders: Record<string, () => Promise<ComponentType>> = {
  blank: async () => (await import('../steps/blank/blank-step.tsx')).BlankStep,
  handle: async () => (await import('../steps/handle/handle-step.tsx')).HandleStep,
  layout: async () => (await import('../steps/layout/layout-step.tsx')).LayoutStep,
  marks: async () => (await import('../steps/marks/marks-step.tsx')).MarksStep,
  'load-test': async () => (await import('../steps/load-test/load-test-step.tsx')).LoadTestStep,
  guides: async () => (await import('../steps/guides/guides-step.tsx')).GuidesStep,
  wraps: async () => (await import('../steps/wraps/wraps-step.tsx')).WrapsStep,
  finish: async () => (await import('../steps/finish/finish-step.tsx')).FinishStep,
  plan: async () => (await import('../steps/plan/plan-step.tsx')).PlanStep,
  bench: async () => (await import('../steps/plan/bench-step.tsx')).BenchStep,
  papers: async () => (await import('../steps/papers/papers-step.tsx')).PapersStep,
  history: async () => (await import('../parts/history/history-sheet.tsx')).HistorySheet,
};
const sheets: Record<string, ComponentType> = Object.fromEntries(
  Object.entries(loaders).map(([step, load]) => [step, lazy(async () => ({ default: await load() }))]),
);

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
