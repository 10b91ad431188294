/** The steps of a build in the order of the craft. */
export interface Step {
  id: string;
  name: string;
  /** What it will need before it opens; a step with an entry is not there yet. */
  notYet?: string;
}

export const steps: readonly Step[] = [
  { id: 'blank', name: 'Blank' },
  { id: 'handle', name: 'Handle' },
  { id: 'layout', name: 'Layout' },
  { id: 'marks', name: 'Marks' },
  { id: 'guides', name: 'Guides' },
  { id: 'load-test', name: 'Load test' },
  { id: 'wraps', name: 'Wraps' },
  { id: 'finish', name: 'Finish' },
  { id: 'plan', name: 'Plan' },
  { id: 'papers', name: 'Papers' },
];

/** Screens of a step that another step leads to. */
const screens: readonly Step[] = [{ id: 'blank/spine', name: 'Sweep and spine' }];

export function stepName(step: string): string {
  return [...steps, ...screens].find(({ id }) => id === step)?.name ?? step;
}
