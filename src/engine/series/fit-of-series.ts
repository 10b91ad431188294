/** The fit of a blank whose series is known: the series is used where the blank is like it, and never forced on it. */
import { type FitResult, fitStiffness } from '../stiffness/fit.ts';
import type { FitRequest, SeriesPrior } from '../stiffness/request.ts';
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
  const { prior, ...series } = seriesFor(request, learnt);
  return { ...fitStiffness(withSeries(request, prior)), series };
}

/** The request as it is fitted: with the series where it may speak, by itself otherwise. */
export function withSeries(request: FitRequest, prior: SeriesPrior | undefined): FitRequest {
  return prior ? { ...request, blank: { ...request.blank, series: prior } } : request;
}

/** Whether the series may speak of this blank, why, and how strongly. */
export function seriesFor(
  request: FitRequest,
  learnt: LearntSeries,
): SeriesUse & { prior: SeriesPrior | undefined } {
  const blanks = learnt.blanks === 1 ? '1 measured blank' : `${learnt.blanks} measured blanks`;
  const alone = (words: string, innovation?: Innovation) => ({
    used: false,
    innovation,
    words,
    prior: undefined,
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
      'This blank is unlike its series: its readings lie further off than those of 99 in 100 blanks of it would. It is read by itself; look at the readings, or at the name of the series.',
      innovation,
    );
  const widened = innovation.verdict === 'doubtful' ? innovation.chiSquare / innovation.degrees : 1;
  const between = learnt.prior.between.map((value) => widened * value);
  const words =
    widened > 1
      ? `It lies at the edge of its series of ${blanks}; the series is given less weight.`
      : `Read with what ${blanks} of its series say.`;
  return { used: true, innovation, words, prior: { ...learnt.prior, between } };
}
