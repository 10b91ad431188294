/**
 * A layout read under every load of the ladder: the bend with the line through the rings, and how far what it is
 * judged by (criteria.ts) is from the builder's limits.
 *
 * Counted: the line angle at every guide but the stripping guide (reel and hand set that one) and not at the
 * tip-top (the pull sets it); gap and extra bend of every span between two rings, not the one to the reel.
 * Frame, signs and definitions: bend/bend.ts and bend/reading.ts.
 */

import type { BendAnswer } from '../bend/bend.ts';
import type { RingReading, SpanReading } from '../bend/reading.ts';
import { planarLadder } from './ladder-in-plane.ts';
import { onOneSide, spaceLadder } from './ladder-in-space.ts';
import type { Ladder, LadderRequest } from './ladder-request.ts';
import { type LadderState, makeLadderState, solveLoad, takeLayout } from './ladder-state.ts';
import { largestOf, type WorstOf, type WorstPlace, worstOfLoad, worstOfPlaces } from './worst.ts';

export interface LoadReading {
  status: BendAnswer['status'];
  /** Nodes of the bent blank, tip first; their number stays the same while guides move a little. */
  fromTipM: Float64Array;
  xM: Float64Array;
  yM: Float64Array;
  angleRad: Float64Array;
  /** Out of the plane, to the right; left out for a rod that stays in it. */
  zM?: Float64Array;
  /** Ring 0 is the tip-top's, ring i + 1 that of guide i. */
  rings: (RingReading & { zM?: number })[];
  /** Span i lies between ring i and ring i + 1. */
  spans: SpanReading[];
  worstOf: WorstOf;
  worstAt: WorstPlace;
}
export interface LadderReading {
  /** The worst status of any load; readings of a load that is 'not-converged' do not count. */
  status: BendAnswer['status'];
  loads: LoadReading[];
  worstOf: WorstOf;
  worstAt: WorstPlace;
  /** Largest ratio of a counted reading to its limit; 0 where none counts. */
  worst: number;
}

/** At 120 elements a 3 m rod is true to about 0.1 mm and the ratios to 0.05 %. */
export const ladderDefaults = { resolution: 120 };

/** Throws on requests that the door would refuse (non-ascending tables, wrong number of ring heights). */
export function makeLadder(request: LadderRequest, options: { resolution: number } = ladderDefaults): Ladder {
  const { guides } = request;
  if (guides.ringHeightsM.length !== guides.count) {
    throw new Error(`${guides.ringHeightsM.length} ring heights for ${guides.count} guides`);
  }
  const planar = onOneSide(request);
  return planar ? planarLadder(planar, options) : spaceLadder(request, options);
}

/**
 * Reads the layout `fromTipM` (one station per guide, ascending). `keep` carries the bends of the last call,
 * so that a guide moved a little costs a few Newton steps; it is changed by the call, the reading is not
 * shared with it. Where a load has several bends, guides moved under it may keep one that loading the rod from
 * nothing does not reach: read without `keep` what is to be trusted or stored.
 */
export function readLadder(
  ladder: Ladder,
  fromTipM: readonly number[],
  keep: LadderState = makeLadderState(),
): LadderReading {
  takeLayout(keep, ladder, fromTipM);
  const loads = keep.bends.map((_, load) => readLoad(ladder, keep, load));
  const counted = loads.filter((reading) => reading.status !== 'not-converged');
  const worstOf = worstOfPlaces(counted.map((reading) => reading.worstOf));
  const worstAt = largestOf(worstOf);
  return { status: worstStatus(loads), loads, worstOf, worstAt, worst: Math.max(0, worstAt.ratio) };
}

function readLoad(ladder: Ladder, keep: LadderState, load: number): LoadReading {
  const status = solveLoad(keep, load);
  const mesh = keep.mesh!;
  const { rings, spans } = keep.bends[load].read(mesh);
  const { xM, yM, angleRad, zM } = keep.bends[load].shape();
  const worstOf = worstOfLoad({ rings, spans }, ladder.request.limits, load);
  const reading: LoadReading = {
    status,
    fromTipM: mesh.fromTipM.slice().reverse(),
    xM: xM.slice().reverse(),
    yM: yM.slice().reverse(),
    angleRad: angleRad.slice().reverse(),
    rings,
    spans,
    worstOf,
    worstAt: largestOf(worstOf),
  };
  if (zM) reading.zM = zM.slice().reverse();
  return reading;
}

function worstStatus(loads: readonly LoadReading[]): BendAnswer['status'] {
  const order = ['not-converged', 'branch-lost'] as const;
  return order.find((status) => loads.some((reading) => reading.status === status)) ?? 'converged';
}
