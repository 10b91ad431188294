/** What is due when after a coat was brushed on: times of the product at the room's temperature, added to one instant. */
import { type BenchFinding, doubtsOf, stopsOf } from '../bench/bench-finding.ts';
import type { FinishKinds } from './finish-kinds.ts';
import { commonHalvesPerC, timeAtRoom } from './temperature.ts';

/** From the data sheet, seconds at `statedC`. */
export interface ProductTimes {
  statedC: number;
  potLifeS: number;
  turnForS: number;
  recoatFromS: number;
  recoatUntilS: number;
  flexAfterS: number;
  fishAfterS: number;
  /** Degrees of the room that halve a time; left out: 10. */
  halvesPerC?: number;
}
/**
 * Common practice, no source: 20 min of pot life at 23 °C, 6 h of turning, recoat after 12 and within 48 h, bend
 * after 24 h, fish after 5 days.
 */
export const commonTimes: ProductTimes = {
  statedC: 23,
  potLifeS: 20 * 60,
  turnForS: 6 * 3600,
  recoatFromS: 12 * 3600,
  recoatUntilS: 48 * 3600,
  flexAfterS: 24 * 3600,
  fishAfterS: 5 * 86_400,
  halvesPerC: commonHalvesPerC,
};

export type Due = 'brushing-ends' | 'stop-turning' | 'recoat-from' | 'recoat-until' | 'flex' | 'fish';
export interface DueTime {
  due: Due;
  /** Milliseconds since 1970, as the instant brushed. */
  atMs: number;
}

/** In order of time. A coat that another lies on has only its own brushing and turning left to show. */
export function coatSchedule(
  brushedAtMs: number,
  times: ProductTimes,
  { roomC, latest }: { roomC: number; latest: boolean },
): DueTime[] {
  const at = (due: Due, statedS: number): DueTime => ({
    due,
    atMs: brushedAtMs + 1000 * timeAtRoom(statedS, times.statedC, roomC, times.halvesPerC),
  });
  const own = [at('brushing-ends', times.potLifeS), at('stop-turning', times.turnForS)];
  const after = [
    at('recoat-from', times.recoatFromS),
    at('recoat-until', times.recoatUntilS),
    at('flex', times.flexAfterS),
    at('fish', times.fishAfterS),
  ];
  return (latest ? [...own, ...after] : own).sort((a, b) => a.atMs - b.atMs);
}

const stopAt = stopsOf<FinishKinds>();
const doubtAt = doubtsOf<FinishKinds>();

/** What makes no sense in the order of the times, and a recoat outside the window of the coat before. */
export function timesFindings(times: ProductTimes): BenchFinding[] {
  const findings: BenchFinding[] = [];
  const { recoatFromS: fromS, recoatUntilS: untilS, turnForS, fishAfterS, flexAfterS } = times;
  if (untilS <= fromS)
    findings.push(stopAt('finish/-/recoatUntil', 'finish/recoat-window', { fromS, untilS }));
  if (turnForS <= times.potLifeS) {
    findings.push(stopAt('finish/-/turnFor', 'finish/turning-short', { turnForS }));
  }
  if (fishAfterS < flexAfterS) {
    findings.push(stopAt('finish/-/fishAfter', 'finish/fish-before-flex', { fishAfterS, flexAfterS }));
  }
  return findings;
}

interface RecoatVerdict {
  status: 'too-early' | 'now' | 'sand-first';
  fromMs: number;
  untilMs: number;
}

/** Whether another coat may go on the one brushed before. */
export function recoatAt(
  nowMs: number,
  before: { brushedAtMs: number; roomC: number },
  times: ProductTimes,
): RecoatVerdict {
  const at = (statedS: number) =>
    before.brushedAtMs + 1000 * timeAtRoom(statedS, times.statedC, before.roomC, times.halvesPerC);
  const [fromMs, untilMs] = [at(times.recoatFromS), at(times.recoatUntilS)];
  const status = nowMs < fromMs ? 'too-early' : nowMs <= untilMs ? 'now' : 'sand-first';
  return { status, fromMs, untilMs };
}

export interface Coat {
  id: string;
  brushedAtMs: number;
  roomC: number;
}

/** Coats in the order they were brushed on. Each finding stands at the coat's own instant. */
export function coatFindings(coats: readonly Coat[], times: ProductTimes, nowMs: number): BenchFinding[] {
  return coats.flatMap((coat, index) => {
    const path = `coats/${coat.id}/brushedAt`;
    if (coat.brushedAtMs > nowMs + clockSlackMs) {
      return [stopAt(path, 'finish/coat-in-future', { coat: index + 1 })];
    }
    const before = coats[index - 1];
    if (!before) return [];
    const values = { coat: index + 1 };
    if (coat.brushedAtMs <= before.brushedAtMs) return [stopAt(path, 'finish/coat-order', values)];
    const { status } = recoatAt(coat.brushedAtMs, before, times);
    if (status === 'too-early') return [doubtAt(path, 'finish/coat-too-early', values)];
    return status === 'sand-first' ? [doubtAt(path, 'finish/coat-too-late', values)] : [];
  });
}

/** Clocks of two devices are rarely nearer. */
const clockSlackMs = 120_000;
