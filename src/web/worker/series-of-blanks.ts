import { learnSeriesSteps, longestDifference } from '../../engine/series/learn-series.ts';
import { seriesMember } from '../../engine/series/member.ts';
import { seriesFor } from '../../engine/series/use-of-series.ts';
import type { SeriesAnswer, SeriesTask } from './doubt-messages.ts';

/** What the other blanks of a series say, and whether they may speak of this one. */
export function seriesOfBlanks({ blanks, request }: SeriesTask): SeriesAnswer {
  const { lengthM } = request.blank;
  const alike = blanks.filter(
    (one) => Math.abs(one.request.blank.lengthM / lengthM - 1) <= longestDifference,
  );
  const members = alike.flatMap(({ id, name, request: bench }) => seriesMember(id, name, bench) ?? []);
  const leftOut = blanks.length - members.length;
  if (members.length === 0) return { leftOut, learnt: undefined, use: undefined, prior: undefined };
  const steps = learnSeriesSteps(members);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const learnt = step.value;
  const { prior, ...use } = seriesFor(request, learnt);
  return { leftOut, learnt, use, prior };
}
