/**
 * Times of a resin at another temperature: t(T) = t₀ × 2^((T₀ − T) / h), T in °C, h = 10 °C.
 *
 * "Halves for every 10 °C more" is common practice, no source; it is the usual rule of thumb for reactions near
 * room temperature and no property of any product. Used from 15 to 30 °C and within 10 °C of the data sheet's own
 * temperature; beyond, the finding says so and the data sheet decides. A product that is known to halve over another
 * h has it typed in.
 */
import { type BenchFinding, doubtsOf } from '../bench/bench-finding.ts';
import type { FinishKinds } from './finish-kinds.ts';

const doubtAt = doubtsOf<FinishKinds>();

/** Seconds (or any unit of time) at `roomC`, from what holds at `statedC`. */
export function timeAtRoom(
  stated: number,
  statedC: number,
  roomC: number,
  halvesPerC: number = commonHalvesPerC,
): number {
  return stated * 2 ** ((statedC - roomC) / halvesPerC);
}
export const commonHalvesPerC = 10;

export function temperatureFindings(statedC: number, roomC: number): BenchFinding[] {
  const path = 'finish/-/roomC';
  if (roomC < 15 || roomC > 30) return [doubtAt(path, 'finish/room-outside-rule', { roomC })];
  if (Math.abs(statedC - roomC) <= 10) return [];
  return [doubtAt(path, 'finish/room-off-sheet', { roomC, sheetC: statedC })];
}
