/** What is read at one guide, over all loads, beside its limits. */

import { criterionOf, limitAtGuide, type Metric, valueAtGuide } from '../engine/layout/criteria.ts';
import type { LayoutLimits } from '../engine/layout/ladder-request.ts';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import { capital } from './capital.ts';
import { criterionWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';

/** `Line angle 17° of 15° at 400 g, over the limit; gap by rule 5⁄16 in of 13⁄32 in at 400 g`. */
export function guideReadingInWords(
  reading: RuledReading,
  guide: number,
  limits: LayoutLimits,
  writer: LadderWriter,
): string {
  const metrics = ['lineAngle', limits.intoBlankM === undefined ? 'gap' : 'intoBlank'] as const;
  const words = metrics.map((metric) => mostAtGuide(metric, reading, guide, limits, writer));
  return capital(words.filter(Boolean).join('; '));
}

/** The first half of it; empty where the guide's angle has no limit. */
export function guideAngleInWords(
  reading: RuledReading,
  guide: number,
  limits: LayoutLimits,
  writer: LadderWriter,
): string {
  return capital(mostAtGuide('lineAngle', reading, guide, limits, writer));
}

function mostAtGuide(
  metric: Metric,
  { loads }: RuledReading,
  guide: number,
  limits: LayoutLimits,
  writer: LadderWriter,
): string {
  const criterion = criterionOf(metric);
  const values = loads.map((load) =>
    load.spans[guide] ? valueAtGuide(criterion, load, guide, limits) : undefined,
  );
  const most = values.reduce<number>((at, value, i) => ((value ?? -1) > (values[at] ?? -1) ? i : at), 0);
  const value = values[most];
  if (value === undefined) return '';
  const limit = limitAtGuide(criterion, limits, guide, loads[most]);
  const beside = criterionWords[metric].besideLimit({ value, limit }, loads[most].ruled[guide], writer);
  return `${beside} at ${writer.loads[most]}${value > limit ? ', over the limit' : ''}`;
}
