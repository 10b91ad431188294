import type { TestReport } from '../record/test-report.ts';
import { closeUpWords } from './close-up.ts';
import { isSaid, sentenceOf } from './sentence.ts';
import { traceWords } from './trace.ts';
import type { Writer } from './writer.ts';

type ShowLength = (lengthM: number) => string;

/** What was found when a load test was accepted, a line each; what version 0.1 kept in words stays as it was. */
export function testReportWords(
  report: TestReport | string | undefined,
  show: ShowLength,
  writer: Writer,
): string {
  if (report === undefined || typeof report === 'string') return report ?? '';
  const odd = traceWords(
    report.odd,
    report.marks.map((mark) => mark.replaceAll('-', ' ')),
    writer,
  );
  return [
    ...headOf(report, show, writer),
    ...report.closeUps.map((use) => closeUpWords(use, show, writer)),
    ...report.places.map((place, i) => placeWords(place, i === 0, show)),
    ...report.doubts.filter(isSaid).map((doubt) => sentenceOf(doubt, writer)),
    ...odd,
  ].join('\n');
}

function headOf(report: TestReport, show: ShowLength, writer: Writer): string[] {
  const { rod, hungKg, buttAngleRad, lengthM, picture, readOn, marksRmsM, engineVersion } = report;
  const hung = hungKg === undefined ? 'weight not entered' : `${writer.mass(hungKg)} on the tip`;
  return [
    `${rod === 'bare' ? 'Bare blank' : 'Taped-up rod'}, ${hung}, butt ${writer.lineAngle(buttAngleRad)} above level by the picture.`,
    `Curve of ${show(lengthM)} read from ${picture || 'a picture'} on ${readOn.slice(0, 10)}, marks fit to ${show(marksRmsM)}, Fairbend ${engineVersion}.`,
  ];
}

function placeWords(
  { fromTipM, outM, upM, apartM, reachM }: TestReport['places'][number],
  isTip: boolean,
  show: ShowLength,
): string {
  const allowed = reachM === undefined ? '' : `, allowed ± ${show(reachM)}`;
  const where = isTip ? 'Tip' : `${show(fromTipM)} from the tip`;
  return `${where}: ${show(outM)} out, ${show(upM)} up; ${show(apartM)} off the prediction${allowed}.`;
}
