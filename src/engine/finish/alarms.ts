/** What of the finish is to be told: the last that came due, coat by coat, until it is heard. */
import { type Coat, coatSchedule, type Due, type DueTime, type ProductTimes } from './schedule.ts';

export interface Alarm extends DueTime {
  coat: string;
  /** Counted from 1. */
  number: number;
}

/** Of each row only the last that came due is told: a rod that may be bent need not be turned. */
const overtaken: readonly (readonly Due[])[] = [
  ['brushing-ends', 'stop-turning', 'flex', 'fish'],
  ['recoat-from', 'recoat-until'],
];

interface AlarmsAsked {
  coats: readonly Coat[];
  times: ProductTimes;
  /** Coats that are planned. */
  coatsInAll: number;
  heard(coat: string, due: Due): boolean;
}

/** Of the latest coat: what lies below it needs nothing more. Recoating is told while another coat is planned. */
export function alarmsDue({ coats, times, coatsInAll, heard }: AlarmsAsked, nowMs: number): Alarm[] {
  const last = coats.at(-1);
  if (!last) return [];
  const due = coatSchedule(last.brushedAtMs, times, { roomC: last.roomC, latest: true }).filter(
    ({ atMs }) => atMs <= nowMs,
  );
  const told = coats.length < coatsInAll ? overtaken : overtaken.slice(0, 1);
  return told
    .map((row) => due.findLast((one) => row.includes(one.due)))
    .filter((one) => one !== undefined && !heard(last.id, one.due))
    .map((one) => ({ ...one!, coat: last.id, number: coats.length }));
}
