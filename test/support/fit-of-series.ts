import type { LearntSeries } from '../../src/engine/series/learn-series.ts';
import { type SeriesUse, seriesFor, withSeries } from '../../src/engine/series/use-of-series.ts';
import { type FitResult, fitStiffness } from '../../src/engine/stiffness/fit.ts';
import type { FitRequest } from '../../src/engine/stiffness/request.ts';

/** A blank fitted as the page fits it where its series is known. */
export function fitOfSeries(request: FitRequest, learnt: LearntSeries): FitResult & { series: SeriesUse } {
  const { prior, ...series } = seriesFor(request, learnt);
  return { ...fitStiffness(withSeries(request, prior)), series };
}
