import { findingsOf } from '../engine/finding.ts';

/** What a record leaves open that nothing can stand in for. */
export interface RecordKinds {
  'record/length-missing': { section: string };
  'record/diameter-unplaced': Nothing;
  'record/overlap-missing': { section: string };
  'record/clamp-missing': { setup: string };
  'record/drop-unplaced': Nothing;
  'record/span-incomplete': { setup: string };
  'record/nothing-weighed': Nothing;
  'record/friction-order': { lowest: number; highest: number };
  'record/fly-line-on-rod': { written: string; rod: string };
  'record/drag-over-test': { dragKg: number; testKg: number };
  'record/lure-order': { leastKg: number; mostKg: number };
  'record/sighting-half': Nothing;
  'record/sightings-close': { nearM: number; farM: number; leastM: number };
  'record/sightings-off-reel': { sightedM: number; typedM: number };
  'record/reel-and-guides': { reelOver: boolean };
  'record/hand-off-grip': { upperM: number; lowerM: number; gripM: number };
  'record/hands-order': { upperM: number; lowerM: number; gripM: number };
  'record/list-missing': Nothing;
  'record/list-count': { given: number; guides: number };
}
type Nothing = Record<string, never>;

/** What common practice stands in for, where the record says nothing. */
export interface AssumedKinds {
  'assumed/spigot-gap': { section: string; gapM: number };
  'assumed/grip-front': { fromButtM: number };
  'assumed/reel-place': { fromButtM: number };
  'assumed/reel-offset': { offM: number };
  'assumed/guides': { count: number };
  'assumed/first-guide': { fromTipM: number };
  'assumed/stripping-guide': { fromButtM: number };
}

export const assume = findingsOf<AssumedKinds>();
