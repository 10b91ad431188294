import type { Bench } from '../engine/bench/bench.ts';
import type { Choices } from '../engine/flow/choices.ts';
import type { BuildStage, BuildWork } from '../engine/flow.ts';
import { workBuild } from '../engine/flow.ts';
import { CommandError, exitCodes } from './exit-codes.ts';
import { findingLines, type OpenBuild } from './open-build.ts';

export interface WorkedBuild {
  bench: Bench;
  choices: Choices;
  work: BuildWork;
}

const stageWords: Record<BuildStage, string> = {
  stiffness: 'Finding the stiffness …',
  layout: 'Placing the guides …',
  marks: 'Reading the marks under load …',
};

/** Progress goes to standard error, so that standard output stays the result. */
export function sayStage(stage: BuildStage): void {
  process.stderr.write(`${stageWords[stage]}\n`);
}

/** Throws a CommandError with the findings where the build cannot be worked through. */
export function workBuildFile({ bench, choices, findings, writer }: OpenBuild): WorkedBuild {
  const stops = findings.filter(({ severity }) => severity === 'stop');
  if (!bench || !choices || stops.length > 0) {
    throw new CommandError(
      `The build cannot be worked through yet:\n${findingLines(stops, writer)}`,
      exitCodes.findings,
    );
  }
  const work = workBuild(bench, choices, sayStage);
  if (work.status === 'done') return { bench, choices, work };
  throw new CommandError(
    `The build cannot be worked through:\n${findingLines(work.findings, writer)}`,
    exitCodes.findings,
  );
}
