import type { FlagCheck } from './bench.ts';

/** Whether both tapes of a flag end between the tip and the clamp. */
export function liesInFront({ fromTipM, fromClampM }: FlagCheck, clampFromTipM: number): boolean {
  return [fromTipM, fromClampM].every((tapeM) => tapeM >= 0 && tapeM <= clampFromTipM);
}
