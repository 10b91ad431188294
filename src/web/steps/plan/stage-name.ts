import { steps } from '../../parts/sheet/steps.ts';

export function stageName(stage: string): string {
  return steps.find(({ id }) => id === stage)?.name ?? stage;
}
