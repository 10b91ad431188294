/** Which reading of a layout is furthest up its limit, and where. */
import {
  type ByQuantity,
  byMetric,
  byQuantity,
  countedValues,
  criteriaIn,
  type DeclaredCriterion,
  type Metric,
  metrics,
  type Readings,
} from './criteria.ts';
import type { LayoutLimits } from './ladder-request.ts';

export interface WorstPlace {
  metric: Metric;
  /** Row of the ladder. */
  load: number;
  /** Ring (0 the tip-top) or span, as the criterion is read; -1 where no reading counts. */
  index: number;
  value: number;
  limit: number;
  ratio: number;
}
export type WorstOf = Record<Metric, WorstPlace>;

export function worstOfLoad(readings: Readings, limits: LayoutLimits, load: number): WorstOf {
  return byMetric((criterion) => {
    const limit = limits[criterion.quantity];
    if (limit === undefined) return { ...nowhere, metric: criterion.id };
    const counted = worstIn(criterion, readings, limit, load);
    const first = criterion.id === 'lineAngle' ? inFirstGuide(readings, limits, load) : undefined;
    return first && first.ratio > counted.ratio ? first : counted;
  });
}

/** The worst of each metric over several loads; none of them, or a metric that does not count: `nowhere`. */
export function worstOfPlaces(loads: readonly WorstOf[]): WorstOf {
  return byMetric(({ id: metric }) =>
    loads
      .map((of) => of[metric])
      .reduce((most, place) => (most.load < 0 || place.ratio > most.ratio ? place : most), {
        ...nowhere,
        metric,
      }),
  );
}

export function largestOf(of: WorstOf): WorstPlace {
  return metrics
    .map((metric) => of[metric])
    .reduce((most, place) => (place.ratio > most.ratio ? place : most));
}

/** The largest value of each criterion that counts. */
export function worstValues(of: WorstOf, limits: LayoutLimits): ByQuantity<number> {
  return byQuantity(({ id }) => of[id].value, criteriaIn(limits));
}

const nowhere = { load: -1, index: -1, value: 0, limit: 0, ratio: -1 };

/** The line angle in the first guide from the reel, where it has a limit of its own. */
function inFirstGuide(
  { rings }: Readings,
  { firstLineAngleRad: limit }: LayoutLimits,
  load: number,
): WorstPlace | undefined {
  if (limit === undefined) return undefined;
  const index = rings.length - 1;
  const value = rings[index].lineAngleRad;
  return { metric: 'lineAngle', load, index, value, limit, ratio: value / limit };
}

function worstIn(criterion: DeclaredCriterion, readings: Readings, limit: number, load: number): WorstPlace {
  const { first, values } = countedValues(criterion, readings);
  let at = -1;
  for (let i = 0; i < values.length; i++) if (at < 0 || values[i] > values[at]) at = i;
  const value = at < 0 ? 0 : values[at];
  return { metric: criterion.id, load, index: at < 0 ? -1 : at + first, value, limit, ratio: value / limit };
}
