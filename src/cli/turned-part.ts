import { readTurned } from '../engine/rotation/turned-section.ts';
import { sentenceOf } from '../words/sentence.ts';
import { bowInWords, chanceWords, stiffnessInWords } from '../words/turning.ts';
import type { OpenBuild } from './open-build.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Sections that were turned: bow and stiffness difference with their ±; nothing where none was. */
export function turnedPart({ bench }: WorkedBuild, { turned, writer }: OpenBuild): string {
  const lines = turned.flatMap((section) => {
    const { answer, findings, read, rows } = readTurned(section);
    const name = bench.sections.find(({ id }) => id === section.sectionId)?.name ?? 'A section';
    const found = findings.map((one) => `    Look at this: ${sentenceOf(one, writer)}`);
    if (!answer || answer.status === 'refused') return [`  ${name}: ${read} of ${rows} steps read`, ...found];
    return [`  ${name}: ${bowInWords(answer, section.held, writer)} ${stiffnessInWords(answer)}`, ...found];
  });
  if (lines.length === 0) return '';
  return ['Sweep and spine. You choose the line side:', ...lines, `  ${chanceWords}`].join('\n');
}

/** The same for `report --json`, SI units. */
export function turnedData({ turned }: OpenBuild) {
  return turned.map((section) => {
    const { answer, findings, read, rows } = readTurned(section);
    return {
      sectionId: section.sectionId,
      held: section.held,
      loadsKg: section.loadsKg,
      read,
      rows,
      answer,
      findings,
    };
  });
}
