/**
 * Where a guide may go: between its neighbours, with its foot off every ferrule's kept-free zone. A place that
 * is refused comes back as the nearest allowed one together with what stopped it.
 */
export interface Zone {
  fromTipM: number;
  toTipM: number;
}
export interface GuideField {
  /** Our marks from the tip down, the stripping guide last. */
  fromTipM: readonly number[];
  /** Length of each guide along the blank. */
  footM: readonly number[];
  /** Ferrules with their clear distance on both sides, from the tip down. */
  keepOut: readonly Zone[];
  pinned: readonly boolean[];
  /** The tip side and butt side ends of the blank that guides may use. */
  room: Zone;
  /** Least distance between two rings. */
  leastIntervalM: number;
}
export type Stop =
  | { by: 'pin' }
  | { by: 'neighbour'; guide: number }
  | { by: 'ferrule'; joint: number; zone: Zone }
  | { by: 'end'; end: 'tip' | 'grip' };
export interface Placed {
  fromTipM: number;
  /** What kept it from the place asked for. */
  stop?: Stop;
}

/** Places closer than this are one: a hundredth of what any tape shows. */
const sameM = 1e-6;

/** The allowed place nearest to `wantedM` for one guide while all others stay. */
export function placeGuide(field: GuideField, guide: number, wantedM: number): Placed {
  if (field.pinned[guide]) return { fromTipM: field.fromTipM[guide], stop: { by: 'pin' } };
  const { low, high } = reachOf(field, guide);
  if (low.atM > high.atM) return { fromTipM: field.fromTipM[guide], stop: low.stop };
  if (wantedM < low.atM) return outOfZones(field, guide, low.atM, low.stop);
  if (wantedM > high.atM) return outOfZones(field, guide, high.atM, high.stop);
  return outOfZones(field, guide, wantedM, undefined);
}

/**
 * One step by key: as `placeGuide`, but a step into a ferrule's zone stops at the near edge, and the next one in
 * the same direction (`stepOver`) goes on at the far edge.
 */
export function stepGuide(field: GuideField, guide: number, byM: number, stepOver: boolean): Placed {
  const here = field.fromTipM[guide];
  const wanted = here + byM;
  const zone = zonesFor(field, guide).find(({ fromTipM, toTipM }) =>
    byM > 0
      ? here <= fromTipM + sameM && wanted > fromTipM + sameM
      : here >= toTipM - sameM && wanted < toTipM - sameM,
  );
  if (!zone || field.pinned[guide]) return placeGuide(field, guide, wanted);
  const [near, far] = byM > 0 ? [zone.fromTipM, zone.toTipM] : [zone.toTipM, zone.fromTipM];
  const { low, high } = reachOf(field, guide);
  const farIsFree = far >= low.atM && far <= high.atM;
  if (stepOver && farIsFree) return { fromTipM: far };
  const nearest = Math.min(Math.max(near, low.atM), high.atM);
  return { fromTipM: nearest, stop: zone.stop };
}

/** A guide's own ends of travel: neighbours, ends of the blank; ferrules in between not counted. */
export function reachOf(field: GuideField, guide: number) {
  const { fromTipM, footM, room, leastIntervalM } = field;
  const apart = (other: number) => Math.max(leastIntervalM, (footM[guide] + footM[other]) / 2);
  const last = fromTipM.length - 1;
  const low: Edge =
    guide > 0
      ? { atM: fromTipM[guide - 1] + apart(guide - 1), stop: { by: 'neighbour', guide: guide - 1 } }
      : { atM: room.fromTipM, stop: { by: 'end', end: 'tip' } };
  const high: Edge =
    guide < last
      ? { atM: fromTipM[guide + 1] - apart(guide + 1), stop: { by: 'neighbour', guide: guide + 1 } }
      : { atM: room.toTipM, stop: { by: 'end', end: 'grip' } };
  return { low, high };
}

interface Edge {
  atM: number;
  stop: Stop;
}

function zonesFor({ keepOut, footM }: GuideField, guide: number) {
  return zonesOfRing(keepOut, footM[guide]);
}

/** The zones as the middle of a guide's ring meets them: half a foot wider on both sides; touching ones are one. */
export function zonesOfRing(keepOut: readonly Zone[], footM: number) {
  const half = footM / 2;
  const wide = keepOut.map((zone, joint) => ({
    fromTipM: zone.fromTipM - half,
    toTipM: zone.toTipM + half,
    stop: { by: 'ferrule', joint, zone } as Stop,
  }));
  const merged: typeof wide = [];
  for (const zone of wide) {
    const before = merged.at(-1);
    if (before && zone.fromTipM < before.toTipM) before.toTipM = Math.max(before.toTipM, zone.toTipM);
    else merged.push({ ...zone });
  }
  return merged;
}

/** The zone a place lies in; one against an edge lies in none. */
export function zoneAt<Z extends Zone>(zones: readonly Z[], atM: number): Z | undefined {
  return zones.find(({ fromTipM, toTipM }) => atM > fromTipM + sameM && atM < toTipM - sameM);
}

function outOfZones(field: GuideField, guide: number, atM: number, stop: Stop | undefined): Placed {
  const zone = zoneAt(zonesFor(field, guide), atM);
  if (!zone) return stop ? { fromTipM: atM, stop } : { fromTipM: atM };
  const { low, high } = reachOf(field, guide);
  const edges = [zone.fromTipM, zone.toTipM].filter((edge) => edge >= low.atM && edge <= high.atM);
  if (edges.length === 0) return { fromTipM: field.fromTipM[guide], stop: zone.stop };
  const nearest = edges.reduce((best, edge) => (Math.abs(edge - atM) < Math.abs(best - atM) ? edge : best));
  return { fromTipM: nearest, stop: zone.stop };
}

/** The builder's tape: dragged guides stand on its ticks. */
export interface Tape {
  stepM: number;
  /** The nearest tick. */
  snap(fromTipM: number): number;
}

/** Puts a guide where it is wanted, as far as it may go, on a tick of the tape. */
export function placeOnTape(field: GuideField, guide: number, wantedM: number, tape: Tape): Placed {
  return snapFree(field, guide, placeGuide(field, guide, tape.snap(wantedM)), tape);
}

/** A place against an edge lies between two ticks: the nearest tick that is free is taken, if one is near. */
export function snapFree(field: GuideField, guide: number, placed: Placed, tape: Tape): Placed {
  const tick = tape.snap(placed.fromTipM);
  const near = [tick, tick - tape.stepM, tick + tape.stepM].map((at) => tape.snap(at));
  const free = near.filter((at) => !placeGuide(field, guide, at).stop);
  const away = (at: number) => Math.abs(at - placed.fromTipM);
  if (free.length === 0) return placed;
  return { ...placed, fromTipM: free.reduce((best, at) => (away(at) < away(best) ? at : best)) };
}
