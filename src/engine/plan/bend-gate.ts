/**
 * Until when the rod must not be bent: glue and finish that are still soft let go or craze. Times of the finish are
 * its product's at the room's temperature; of the glue 24 h if nothing else is said (slow paste epoxy): common
 * practice, no source, and the product's data sheet comes first.
 */
import type { ProductTimes } from '../finish/schedule.ts';
import { timeAtRoom } from '../finish/temperature.ts';

export const commonGlueCureS = 24 * 3600;

export interface SoftWork {
  handleGluedAtMs?: number;
  tipTopGluedAtMs?: number;
  glueCureS: number;
  /** In the order they were brushed on. */
  coats: readonly { brushedAtMs: number; roomC: number }[];
  times: ProductTimes;
}
export interface BendGate {
  /** The last of what is soft; coats count from 1. */
  soft: 'handle' | 'tip-top' | number;
  untilMs: number;
}

/** Undefined while nothing is soft. */
export function bendGate(work: SoftWork, nowMs: number): BendGate | undefined {
  const { times, coats, glueCureS } = work;
  const glue = (soft: 'handle' | 'tip-top', atMs: number | undefined): BendGate[] =>
    atMs === undefined ? [] : [{ soft, untilMs: atMs + 1000 * glueCureS }];
  const soft = [
    ...glue('handle', work.handleGluedAtMs),
    ...glue('tip-top', work.tipTopGluedAtMs),
    ...coats.map(({ brushedAtMs, roomC }, index) => ({
      soft: index + 1,
      untilMs: brushedAtMs + 1000 * timeAtRoom(times.flexAfterS, times.statedC, roomC, times.halvesPerC),
    })),
  ].filter(({ untilMs }) => untilMs > nowMs);
  return soft.sort((a, b) => b.untilMs - a.untilMs)[0];
}
