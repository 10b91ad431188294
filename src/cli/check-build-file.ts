import type { Finding } from '../engine/finding.ts';
import { workBuild } from '../engine/flow.ts';
import { sentenceOf } from '../words/sentence.ts';
import { exitCodes } from './exit-codes.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { sayStage } from './work-build-file.ts';

/** Writes every finding, those of the fit and the layout too where it comes to them; answers the exit code. */
export function checkBuildFile(build: OpenBuild, json: boolean): number {
  const findings = allFindings(build);
  if (json)
    process.stdout.write(
      `${JSON.stringify({ file: build.fileName, findings: said(findings, build) }, null, 2)}\n`,
    );
  else if (findings.length === 0) process.stdout.write(`${build.fileName}: nothing found\n`);
  else process.stdout.write(`${build.fileName}:\n${findingLines(findings, build.writer)}\n`);
  return findings.length === 0 ? exitCodes.fine : exitCodes.findings;
}

/** As data and in words. */
function said(findings: readonly Finding[], { writer }: OpenBuild) {
  return findings.map((one) => ({ ...one, message: sentenceOf(one, writer) }));
}

function allFindings({ bench, choices, findings }: OpenBuild): Finding[] {
  if (!bench || !choices || findings.some(({ severity }) => severity === 'stop')) return findings;
  return [...findings, ...workBuild(bench, choices, sayStage).findings];
}
