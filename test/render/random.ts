/** Seeded random numbers for renderings: the same seed paints the same picture on every machine. */
export interface Random {
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  pick<T>(choices: readonly T[]): T;
}

/** mulberry32 (public domain, T. Ettinger): 32 bits of state, ample for noise in a picture. */
export function randomFrom(seed: number): Random {
  let state = (seed ^ 0x9e3779b9) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  for (let i = 0; i < 8; i++) next();
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return {
    between: (low, high) => low + (high - low) * next(),
    normal,
    chance: (probability) => next() < probability,
    pick: (choices) => choices[Math.floor(next() * choices.length)],
  };
}
