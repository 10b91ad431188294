/**
 * Times of a resin at another temperature: t(T) = t₀ × 2^((T₀ − T) / h), T in °C, h = 10 °C.
 *
 * "Halves for every 10 °C more" is common practice, no source; it is the usual rule of thumb for reactions near
 * room temperature and no property of any product. Used from 15 to 30 °C and within 10 °C of the data sheet's own
 * temperature; beyond, the finding says so and the data sheet decides. A product that is known to halve over another
 * h has it typed in.
 */
import { type BenchFinding, doubt } from '../bench/bench-finding.ts';

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
  if (roomC < 15 || roomC > 30) {
    const why = roomC < 15 ? 'it stays thick, holds bubbles and may not cure through' : 'it gels in minutes';
    const message = `At ${roomC} °C the rule of times does not hold (15 to 30 °C): ${why}. Bring the room to 21 to 27 °C, or go by the data sheet.`;
    return [doubt('finish/-/roomC', message)];
  }
  if (Math.abs(statedC - roomC) > 10) {
    const message = `${roomC} °C is more than 10 °C from the ${statedC} °C the data sheet speaks of: the times are only a guess there.`;
    return [doubt('finish/-/roomC', message)];
  }
  return [];
}
