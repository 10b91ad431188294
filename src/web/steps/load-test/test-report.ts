import { formatDegrees, formatGrams } from '../../../engine/units/format-quantity.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import type { Writer } from '../../../words/writer.ts';
import { closeUpWords } from '../../parts/photo/close-up-words.ts';
import { photoReading } from '../../parts/photo/photo-request.ts';
import type { SeenCurve } from '../../parts/photo/seen-curve.ts';
import { traceWords } from '../../parts/photo/trace-words.ts';
import type { Beside } from './beside.ts';

interface ReportWriters {
  show(lengthM: number): string;
  writer: Writer;
}

/** What was found, as text that is kept with the accepted test, whatever is reckoned later. */
export function testReport(
  test: LoadTest,
  { trace, curve, photo, closeUps }: SeenCurve,
  beside: Beside | undefined,
  { show, writer }: ReportWriters,
): string {
  const odd = traceWords(trace.findings, photoReading(photo, show).marks, writer);
  const hung = test.hungKg === undefined ? 'weight not entered' : `${formatGrams(test.hungKg, 1)} on the tip`;
  const marks = `marks fit to ${show(trace.marksRmsM)}`;
  const head = [
    `${test.rod === 'bare' ? 'Bare blank' : 'Taped-up rod'}, ${hung}, butt ${formatDegrees(curve.buttAngleRad)} above level by the picture.`,
    `Curve of ${show(curve.lengthM)} read from ${photo.name || 'a picture'} on ${trace.madeAt.slice(0, 10)}, ${marks}, Fairbend ${trace.engineVersion}.`,
    ...closeUps.map((use) => closeUpWords(use, show, writer)),
  ];
  const places = (beside?.flags ?? []).map(({ fromTipM, seen, apartM, predicted }, i) => {
    const reachM = predicted.reach && Math.hypot(predicted.reach.outM, predicted.reach.upM);
    const allowed = reachM === undefined ? '' : `, allowed ± ${show(reachM)}`;
    const where = i === 0 ? 'Tip' : `${show(fromTipM)} from the tip`;
    return `${where}: ${show(seen.outM)} out, ${show(seen.upM)} up; ${show(apartM)} off the prediction${allowed}.`;
  });
  return [...head, ...places, ...(beside?.doubts ?? []), ...odd].join('\n').slice(0, 19_900);
}
