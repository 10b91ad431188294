import { type BuildSureness, buildSureness } from '../engine/flow/build-sureness.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Undefined where nothing was hung on the blank: a guess has no band to carry. */
export function sureness({ work }: WorkedBuild): BuildSureness | undefined {
  if (!work.posterior) return undefined;
  process.stderr.write('Reading the layouts on many blanks that fit the readings …\n');
  return buildSureness(work.question, work.best.fromTipM, work.posterior);
}
