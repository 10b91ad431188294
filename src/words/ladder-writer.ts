import type { ShopWriter } from './writer.ts';

/** A writer that knows the load ladder. */
export interface LadderWriter extends ShopWriter {
  /** Names of its loads: `204 g`. */
  readonly loads: readonly string[];
}

export function ladderWriter(writer: ShopWriter, loadsKg: readonly number[]): LadderWriter {
  return { ...writer, loads: loadsKg.map(writer.load) };
}
