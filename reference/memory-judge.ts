/**
 * Whether memory grows with the work done: the median of the slopes between all pairs of looks (Theil and Sen; Sen,
 * J. Am. Stat. Assoc. 63 (1968) 1379, from memory), which one odd look in four does not move. The first looks, in
 * which programs load and compile, are left out.
 */
export interface MemoryLook {
  edits: number;
  bytes: number;
}

export interface MemoryVerdict {
  bytesPerEdit: number;
  grows: boolean;
}

export const memoryDefaults = {
  /** Looks left out at the beginning. */
  warmUp: 5,
  /** Fifty benches with an edit every half minute make 48,000 edits in eight hours: 48 MB at this slope. */
  mostBytesPerEdit: 1000,
};

/** @throws where fewer than five looks remain, from which nothing is to be told */
export function judgeMemory(looks: readonly MemoryLook[], options = memoryDefaults): MemoryVerdict {
  const warm = looks.slice(options.warmUp);
  if (warm.length < 5) throw new Error(`${warm.length} looks after the warm-up; at least 5 are needed`);
  const slopes = warm.flatMap((from, index) =>
    warm.slice(index + 1).map((to) => (to.bytes - from.bytes) / (to.edits - from.edits)),
  );
  const bytesPerEdit = medianOf(slopes);
  return { bytesPerEdit, grows: bytesPerEdit > options.mostBytesPerEdit };
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
