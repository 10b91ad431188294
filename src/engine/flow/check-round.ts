/** What cannot be about guides that stand round the blank, each at its field. */
import { type BenchFinding, doubtsOf } from '../bench/bench-finding.ts';
import type { FerruleZone } from '../bench/ferrule-zones.ts';
import type { Choices } from './choices.ts';
import { guidesRound } from './guides-round.ts';

/** Guides are counted from 1 at the tip. */
export interface RoundKinds {
  'round/starts-on-ferrule': { guide: number; zoneFromM: number; zoneToM: number };
  'round/feet-overlap': { guide: number; next: number; intervalM: number; needM: number };
  'round/turns-back': { guide: number; atRad: number; next: number; nextRad: number };
}
const doubtAt = doubtsOf<RoundKinds>();
const none = 1e-6;

/** For guides at these stations, from the tip down; nothing without a spiral. */
export function checkRound(
  choices: Pick<Choices, 'spiral' | 'guides'>,
  fromTipM: readonly number[],
  zones: readonly FerruleZone[],
): BenchFinding[] {
  const { guides } = choices;
  const heightsM = guides.map(({ ringHeightM }) => ringHeightM);
  const round = guidesRound(choices, guides, heightsM).map(({ fromTopRad }) => fromTopRad);
  const path = (index: number) => `guides/${guides[index].id ?? index}/around`;
  const first = round.findLastIndex((fromTopRad) => Math.abs(fromTopRad) > none);
  const zone = zones.find((one) => overlaps(fromTipM[first], guides[first]?.lengthM ?? 0, one));
  const starts = zone
    ? [
        doubtAt(path(first), 'round/starts-on-ferrule', {
          guide: first + 1,
          zoneFromM: zone.fromTipM,
          zoneToM: zone.toTipM,
        }),
      ]
    : [];
  const pairs = round.slice(1).flatMap((nextRad, i) => {
    const atRad = round[i];
    const [guide, next] = [i + 1, i + 2];
    const intervalM = fromTipM[i + 1] - fromTipM[i];
    const needM = (guides[i].lengthM + guides[i + 1].lengthM) / 2;
    return [
      ...(Math.abs(atRad - nextRad) > none && intervalM < needM - none
        ? [doubtAt(path(i), 'round/feet-overlap', { guide, next, intervalM, needM })]
        : []),
      ...(atRad < nextRad - none
        ? [doubtAt(path(i), 'round/turns-back', { guide, atRad, next, nextRad })]
        : []),
    ];
  });
  return [...starts, ...pairs];
}

function overlaps(stationM: number, footM: number, { fromTipM, toTipM }: FerruleZone): boolean {
  return stationM + footM / 2 > fromTipM + none && stationM - footM / 2 < toTipM - none;
}
