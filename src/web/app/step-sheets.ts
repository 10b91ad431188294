import { type ComponentType, useEffect, useState } from 'react';
import { preload } from '../offline/preload.ts';

/** Every step comes in a file of its own, so that the first page is quick; the others follow while it rests. */
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
const loaded = new Map<string, ComponentType>();

async function loadStep(step: string): Promise<ComponentType> {
  const sheet = loaded.get(step) ?? (await loaders[step]());
  loaded.set(step, sheet);
  return sheet;
}

export function preloadSteps(): void {
  void preload(Object.keys(loaders).map((step) => () => loadStep(step)));
}

export type StepSheet =
  | { kind: 'unknown' }
  | { kind: 'loading' }
  | { kind: 'open'; Sheet: ComponentType }
  /** Not on this device yet, and it did not come; tried again by itself. */
  | { kind: 'away' };

const triedAgainMs = 3000;

export function useStepSheet(step: string): StepSheet {
  const [found, setFound] = useState<{ step: string; away?: true }>({ step });
  useEffect(() => {
    if (!Object.hasOwn(loaders, step) || loaded.has(step)) return;
    let timer: ReturnType<typeof setTimeout>;
    let left = false;
    const tryOnce = () =>
      loadStep(step).then(
        () => !left && setFound({ step }),
        () => {
          if (left) return;
          setFound({ step, away: true });
          timer = setTimeout(tryOnce, triedAgainMs);
        },
      );
    void tryOnce();
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [step]);
  if (!Object.hasOwn(loaders, step)) return { kind: 'unknown' };
  const Sheet = loaded.get(step);
  if (Sheet) return { kind: 'open', Sheet };
  return { kind: found.step === step && found.away ? 'away' : 'loading' };
}
