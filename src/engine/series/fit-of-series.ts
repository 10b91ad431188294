/** The fit of a blank whose series is known: the series is used where the blank is like it, and never forced on it. */
import { type FitResult, fitStiffness } from '../stiffness/fit.ts';
import type { FitAnswer, FitRequest } from '../stiffness/request.ts';
import { type Innovation, innovationOf } from './innovation.ts';
import { type LearntSeries, longestDifference } from './learn-series.ts';
import { seriesMember } from './member.ts';

export interface SeriesUse {
  /** Whether the answer leans on the series. */
  used: boolean;
  innovation: Innovation | undefined;
  /** In a sentence for the builder. */
  words: string;
}
export interface SeriesFit extends FitResult {
  series: SeriesUse;
}

export function fitOfSeries(request: FitRequest, learnt: LearntSeries): SeriesFit {
  const blanks = learnt.blanks === 1 ? '1 measured blank' : `${learnt.blanks} measured blanks`;
  const alone = (words: string, innovation?: Innovation): SeriesFit => ({
    ...fitStiffness(request),
    series: { used: false, innovation, words },
  });
  if (Math.abs(request.blank.lengthM / learnt.lengthM - 1) > longestDifference)
    return alone(
      `This blank is not as long as its series (${learnt.lengthM.toFixed(3)} m): it is read by itself.`,
    );
  const member = seriesMember('', '', request);
  if (!member)
    return alone(
      'Its own readings are too few or too odd to hold it against its series: it is read by itself.',
    );
  const innovation = innovationOf(learnt.prior, member);
  if (innovation.verdict === 'unlike its series')
    return alone(
      `This blank is unlike its series: its readings lie further off than 99 of 100 of the series would. It is read by itself; look at the readings, or at the name of the series.`,
      innovation,
    );
  const widened = innovation.verdict === 'doubtful' ? innovation.chiSquare / innovation.degrees : 1;
  const between = learnt.prior.between.map((value) => widened * value);
  const fitted = fitStiffness({
    ...request,
    blank: { ...request.blank, series: { ...learnt.prior, between } },
  });
  const words =
    widened > 1
      ? `It lies at the edge of its series of ${blanks}; the series is given less weight.`
      : `Read with what ${blanks} of its series say.`;
  return { ...fitted, series: { used: true, innovation, words } };
}

/** For a worker: the answer alone. */
export function seriesAnswer(
  request: FitRequest,
  learnt: LearntSeries,
): { answer: FitAnswer; series: SeriesUse } {
  const { answer, series } = fitOfSeries(request, learnt);
  return { answer, series };
}
