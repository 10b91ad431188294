/** A blank whose series is known: the series is used where the blank is like it, and never forced on it. */
import { type Reason, reasonsOf } from '../finding.ts';
import type { FitRequest, SeriesPrior } from '../stiffness/request.ts';
import { type Innovation, innovationOf } from './innovation.ts';
import { type LearntSeries, longestDifference } from './learn-series.ts';
import { seriesMember } from './member.ts';

export interface SeriesUse {
  /** Whether the answer leans on the series. */
  used: boolean;
  innovation: Innovation | undefined;
  why: Reason;
}

/** Whether a blank is read with its series, and why. */
export interface SeriesKinds {
  'series/other-length': { lengthM: number };
  'series/few-readings': Record<string, never>;
  'series/unlike': Record<string, never>;
  'series/at-edge': { blanks: number };
  'series/read-with': { blanks: number };
}
const seriesReason = reasonsOf<SeriesKinds>();

/** The request as it is fitted: with the series where it may speak, by itself otherwise. */
export function withSeries(request: FitRequest, prior: SeriesPrior | undefined): FitRequest {
  return prior ? { ...request, blank: { ...request.blank, series: prior } } : request;
}

/** Whether the series may speak of this blank, why, and how strongly. */
export function seriesFor(
  request: FitRequest,
  learnt: LearntSeries,
): SeriesUse & { prior: SeriesPrior | undefined } {
  const { blanks, lengthM } = learnt;
  const alone = (why: Reason, innovation?: Innovation) => ({
    used: false,
    innovation,
    why,
    prior: undefined,
  });
  if (Math.abs(request.blank.lengthM / lengthM - 1) > longestDifference)
    return alone(seriesReason('series/other-length', { lengthM }));
  const member = seriesMember('', '', request);
  if (!member) return alone(seriesReason('series/few-readings', {}));
  const innovation = innovationOf(learnt.prior, member);
  if (innovation.verdict === 'unlike') return alone(seriesReason('series/unlike', {}), innovation);
  const widened = innovation.verdict === 'doubtful' ? innovation.chiSquare / innovation.degrees : 1;
  const between = learnt.prior.between.map((value) => widened * value);
  const why = seriesReason(widened > 1 ? 'series/at-edge' : 'series/read-with', { blanks });
  return { used: true, innovation, why, prior: { ...learnt.prior, between } };
}
