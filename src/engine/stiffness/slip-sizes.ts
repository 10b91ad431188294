/**
 * How large a slip at the bench is apt to be, as a density over its amplitude, and what an amplitude that was
 * estimated as â ± s then counts for: with p the density and L(a) ∝ exp(-(a - â)²/2s²) what the readings say,
 *
 *   ∫ p(a) L(a) da = √(2π) s · (p * N(0, s²))(â)
 *
 * (Bayes factor in Laplace's approximation). A tape slips by whole steps as a rule, a weight by a wrong piece rather
 * than by three percent, an edge by one radius or two. Shares and widths: a judgement, no source.
 */
import type { DoubtKind } from './fit-kinds.ts';

interface Part {
  share: number;
  at: number;
  /** Standard deviation about it; 0: exactly there. */
  spread: number;
}

/** 2 ln of that integral, below 0: what speaks against an amplitude because many others were possible. 0: not weighed. */
export function sizeCounts(kind: DoubtKind, amplitude: number, sigma: number): number {
  const parts = partsOf[kind];
  if (!parts) return 0;
  const density = parts.reduce((sum, { share, at, spread }) => {
    const width = Math.hypot(spread, sigma);
    return sum + (share / width) * Math.exp(-0.5 * ((amplitude - at) / width) ** 2);
  }, 0);
  return 2 * Math.log(Math.max(sigma * density, 1e-300));
}

function bothWays(share: number, at: number): Part[] {
  return [at, -at].map((place) => ({ share: 0.5 * share, at: place, spread: 0 }));
}

function about(share: number, spread: number): Part {
  return { share, at: 0, spread };
}

/** Steps of a tape, m: an inch, a centimetre, half an inch, two inches, five and ten centimetres. */
const tapeSteps = [
  ...bothWays(0.25, 0.0254),
  ...bothWays(0.1, 0.01),
  ...bothWays(0.05, 0.0127),
  ...bothWays(0.03, 0.0508),
  ...bothWays(0.02, 0.05),
  ...bothWays(0.05, 0.1),
];
const onTape = [...tapeSteps, about(0.5, 0.02)];

const partsOf: Partial<Record<DoubtKind, readonly Part[]>> = {
  reading: [...tapeSteps, about(0.4, 0.05), about(0.1, 0.5)],
  flag: onTape,
  stations: onTape,
  slip: [about(1, 0.02)],
  load: [about(0.3, 0.05), about(0.7, 1)],
  /** As a share of what was weighed, or of the balance point's distance. */
  mass: [about(0.7, 0.05), about(0.3, 1)],
  /** Of the tip, m. */
  sway: [about(1, 0.02)],
  edge: [...bothWays(0.6, 1), ...bothWays(0.3, 2), about(0.1, 1)],
};
