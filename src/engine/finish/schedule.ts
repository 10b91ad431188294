/** What is due when after a coat was brushed on: times of the product at the room's temperature, added to one instant. */
import { type BenchFinding, doubt, stop } from '../bench/bench-finding.ts';
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

export type Due = 'brushing ends' | 'stop turning' | 'recoat from' | 'recoat until' | 'flex' | 'fish';
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
  const own = [at('brushing ends', times.potLifeS), at('stop turning', times.turnForS)];
  const after = [
    at('recoat from', times.recoatFromS),
    at('recoat until', times.recoatUntilS),
    at('flex', times.flexAfterS),
    at('fish', times.fishAfterS),
  ];
  return (latest ? [...own, ...after] : own).sort((a, b) => a.atMs - b.atMs);
}

/** What makes no sense in the order of the times, and a recoat outside the window of the coat before. */
export function timesFindings(times: ProductTimes): BenchFinding[] {
  const findings: BenchFinding[] = [];
  const hours = (seconds: number) => `${Number((seconds / 3600).toFixed(1))} h`;
  if (times.recoatUntilS <= times.recoatFromS) {
    const message = `The recoat window would close (${hours(times.recoatUntilS)}) before it opens (${hours(times.recoatFromS)}): read both off the data sheet again.`;
    findings.push(stop('finish/-/recoatUntil', message));
  }
  if (times.turnForS <= times.potLifeS) {
    const message = `Turning for ${hours(times.turnForS)} ends before the finish has gelled: it would sag. Turn for 4 to 8 h.`;
    findings.push(stop('finish/-/turnFor', message));
  }
  if (times.fishAfterS < times.flexAfterS) {
    const message = `Fishing after ${hours(times.fishAfterS)} comes before bending after ${hours(times.flexAfterS)}: make it the later one.`;
    findings.push(stop('finish/-/fishAfter', message));
  }
  return findings;
}

export interface RecoatVerdict {
  status: 'too early' | 'now' | 'sand first';
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
  const status = nowMs < fromMs ? 'too early' : nowMs <= untilMs ? 'now' : 'sand first';
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
      return [stop(path, `Coat ${index + 1} would be brushed on in the future: set it to when it was done.`)];
    }
    const before = coats[index - 1];
    if (!before) return [];
    if (coat.brushedAtMs <= before.brushedAtMs) {
      const message = `Coat ${index + 1} would lie in the past, before coat ${index}: correct the earlier of the two.`;
      return [stop(path, message)];
    }
    const { status } = recoatAt(coat.brushedAtMs, before, times);
    if (status === 'too early') {
      const message = `Coat ${index + 1} went on before coat ${index} was ready for it: it may wrinkle or stay soft. Give it double the time before bending.`;
      return [doubt(path, message)];
    }
    if (status === 'sand first') {
      const message = `Coat ${index + 1} went on after the recoat window of coat ${index}: if it was not scuffed first, watch for peeling.`;
      return [doubt(path, message)];
    }
    return [];
  });
}

/** Clocks of two devices are rarely nearer. */
const clockSlackMs = 120_000;
