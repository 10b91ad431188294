/**
 * Guides clear of kept-free zones (ferrules). Each guide has to stand on one side of each zone, so the places
 * fall apart into many separate regions. Branch and bound: place the guides without regard to zones; where one
 * lands in a zone, solve again with it held to the tip side, and to the butt side; drop what is no better than
 * the best layout found clear of all zones.
 */
import { nearestLayout, type PlacingRules } from './placing-rules.ts';
import type { Placed } from './trust-search.ts';

export interface KeepOut {
  fromTipM: number;
  toTipM: number;
}
export interface ZoneSearch {
  zones: readonly KeepOut[];
  /** Half the length along the blank of each guide's feet: a zone is that much wider for it. */
  halfFootM: readonly number[];
  /** Places the guides from a layout that keeps the rules; undefined where nothing acceptable is found. */
  place(rules: PlacingRules, start: readonly number[]): Placed | undefined;
  maxNodes: number;
}
interface ZoneResult {
  best: Placed | undefined;
  /** The rules that keep every guide of `best` on its side of every zone. */
  rules: PlacingRules;
  /** Subproblems solved, and whether the bound on them ended the search. */
  nodes: number;
  cutShort: boolean;
}

/** Least price over all ways past the zones, from `starts` (layouts, kept rules not needed). */
export function placeClear(
  search: ZoneSearch,
  rules: PlacingRules,
  starts: readonly (readonly number[])[],
): ZoneResult {
  const result: ZoneResult = { best: undefined, rules, nodes: 0, cutShort: false };
  branch(search, rules, starts, result);
  return result;
}

/** Some layout clear of all zones, wherever; undefined where none was found in `maxNodes` tries. */
export function anyClear(
  zones: Pick<ZoneSearch, 'zones' | 'halfFootM'>,
  rules: PlacingRules,
  start: readonly number[],
  maxNodes = 2000,
): ZoneResult {
  const place = (_: PlacingRules, nearest: readonly number[]) => ({
    fromTipM: [...nearest],
    worst: 0,
    price: 0,
  });
  return placeClear({ ...zones, place, maxNodes }, rules, [start]);
}

function branch(
  search: ZoneSearch,
  rules: PlacingRules,
  starts: readonly (readonly number[])[],
  result: ZoneResult,
): void {
  if (result.nodes >= search.maxNodes) {
    result.cutShort = true;
    return;
  }
  result.nodes++;
  const placed = bestFrom(search, rules, starts);
  if (!placed || cannotBetter(placed, result)) return;
  const clash = deepestClash(search, rules, placed.fromTipM);
  if (!clash) {
    result.best = placed;
    result.rules = holdSides(search, rules, placed.fromTipM);
    return;
  }
  const { guide, tipSideM, buttSideM } = clash;
  const station = placed.fromTipM[guide];
  const toTip = { ...rules, highM: rules.highM.with(guide, tipSideM) };
  const toButt = { ...rules, lowM: rules.lowM.with(guide, buttSideM) };
  const nearFirst = station - tipSideM <= buttSideM - station ? [toTip, toButt] : [toButt, toTip];
  for (const side of nearFirst) {
    if (!cannotBetter(placed, result)) branch(search, side, [placed.fromTipM], result);
  }
}

/** Holding guides to a side only adds to the price; what could be gained must be worth a search. */
function cannotBetter(placed: Placed, { best }: ZoneResult): boolean {
  return best !== undefined && placed.price >= best.price - worthwhile * Math.abs(best.price);
}
const worthwhile = 2e-3;

function holdSides(search: ZoneSearch, rules: PlacingRules, fromTipM: readonly number[]): PlacingRules {
  const lowM = [...rules.lowM];
  const highM = [...rules.highM];
  fromTipM.forEach((station, guide) => {
    const half = search.halfFootM[guide];
    for (const zone of search.zones) {
      if (rules.held[guide] !== undefined) continue;
      if (station < (zone.fromTipM + zone.toTipM) / 2) {
        highM[guide] = Math.min(highM[guide], zone.fromTipM - half);
      } else lowM[guide] = Math.max(lowM[guide], zone.toTipM + half);
    }
  });
  return { ...rules, lowM, highM };
}

function bestFrom(search: ZoneSearch, rules: PlacingRules, starts: readonly (readonly number[])[]) {
  let best: Placed | undefined;
  for (const start of starts) {
    const nearest = nearestLayout(rules, start);
    if (!nearest) return undefined; // no start changes whether the rules can be kept
    const placed = search.place(rules, nearest);
    if (placed && (!best || placed.price < best.price)) best = placed;
  }
  return best;
}

/** The guide that stands deepest in a zone, and the zone's ends for it. */
export function deepestClash(
  search: Pick<ZoneSearch, 'zones' | 'halfFootM'>,
  rules: Pick<PlacingRules, 'held'>,
  fromTipM: readonly number[],
): { guide: number; zone: number; tipSideM: number; buttSideM: number } | undefined {
  let deepestM = 1e-7; // a guide on a zone's edge is clear of it
  let clash: ReturnType<typeof deepestClash>;
  for (let guide = 0; guide < fromTipM.length; guide++) {
    if (rules.held[guide] !== undefined) continue;
    search.zones.forEach((zone, index) => {
      const tipSideM = zone.fromTipM - search.halfFootM[guide];
      const buttSideM = zone.toTipM + search.halfFootM[guide];
      const depthM = Math.min(fromTipM[guide] - tipSideM, buttSideM - fromTipM[guide]);
      if (depthM > deepestM) {
        deepestM = depthM;
        clash = { guide, zone: index, tipSideM, buttSideM };
      }
    });
  }
  return clash;
}
