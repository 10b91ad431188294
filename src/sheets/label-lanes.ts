/**
 * Keeps the labels along a strip apart. Every label stands to the right of its tick; the leftmost takes the top
 * lane, one that would touch it a lower one, so that no tick on its way up crosses another's label. Guides that
 * builders set (50 mm apart and more) need one lane; three take a cluster of four within 30 mm of each other.
 */
export interface LaneRequest {
  tickMm: number;
  widthMm: number;
}
export interface LanePlace {
  leftMm: number;
  /** 0 is the top one. */
  lane: number;
}
export const laneDefaults = { besideTickMm: 0.8, apartMm: 1.2 } as const;

/** Places in the order of the requests; as many lanes as it takes. */
export function placeInLanes(labels: readonly LaneRequest[]): LanePlace[] {
  const laneEndMm: number[] = [];
  const places: LanePlace[] = new Array(labels.length);
  const order = labels.map((_, index) => index).sort((a, b) => labels[a].tickMm - labels[b].tickMm);
  for (const index of order) {
    const { tickMm, widthMm } = labels[index];
    const leftMm = tickMm + laneDefaults.besideTickMm;
    const lane = laneEndMm.findLastIndex((end) => tickMm < end) + 1;
    laneEndMm[lane] = leftMm + widthMm + laneDefaults.apartMm;
    places[index] = { leftMm, lane };
  }
  return places;
}
