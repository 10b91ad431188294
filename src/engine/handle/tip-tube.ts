/**
 * Bore of a tip-top's tube.
 *
 * Tubes are sold by bore in 64ths of an inch, half sizes too: size k has a bore of k × 25.4/64 mm = k × 0.396875 mm
 * exactly (1 in = 25.4 mm, 1959). Computed, never from a table: printed tables with 0.015 in for 1/64 circulate.
 * Rounding up to the next half size and a clearance of 0.03 to 0.10 mm are common practice, no source.
 */
import { handleDefaults, type Room } from './handle-parts.ts';

export interface TipTube {
  /** In 64ths of an inch, whole or half. */
  size64: number;
  boreM: number;
  /** Bore less the blank's diameter; negative where the tube does not go on. */
  clearanceM: number;
}
export interface TipTubeChoice {
  best: TipTube;
  /** One half size below and above: plating narrows bores, so three are kept at hand. */
  neighbours: [smaller: TipTube, larger: TipTube];
  /** Tight: the bore leaves less room for the glue than wanted (0.03 mm). Loose: more (0.10 mm). */
  fit: 'good' | 'tight' | 'loose';
}

const inch64M = 0.0254 / 64;

/** `outsideM`: the blank's diameter at the tip, positive. The smallest half size that goes on. */
export function chooseTipTube(outsideM: number, room: Room = handleDefaults.tubeRoomM): TipTubeChoice {
  // A diameter on a size within a nanometre is that size.
  const halfSizes = Math.ceil((outsideM / inch64M) * 2 - 1e-6);
  const tube = (halves: number): TipTube => {
    const boreM = tipTubeBoreM(halves / 2);
    return { size64: halves / 2, boreM, clearanceM: boreM - outsideM };
  };
  const best = tube(halfSizes);
  const fit = best.clearanceM < room.least ? 'tight' : best.clearanceM > room.most ? 'loose' : 'good';
  return { best, neighbours: [tube(halfSizes - 1), tube(halfSizes + 1)], fit };
}

/** Bore in metres of a size in 64ths of an inch. */
export function tipTubeBoreM(size64: number): number {
  return (size64 * 254) / (64 * 10_000);
}
