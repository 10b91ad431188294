/** What is held to have gone wrong on the bench, and the fit under it. */
import type { Doubt } from './doubts.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import type { PreparedRequest } from './prepared.ts';
import type { Suspicion } from './suspicion.ts';
import type { SwappedPair } from './swapped-loads.ts';

export type Named =
  | { kind: 'doubt'; suspicion: Suspicion; alternatives: readonly Suspicion[] }
  | { kind: 'swap'; pair: SwappedPair }
  | { kind: 'test'; setup: number; test: number };

export interface Explained {
  /** With swapped loads put right. */
  request: PreparedRequest;
  named: readonly Named[];
}

export interface Fitted {
  problem: FitProblem;
  best: MostProbable;
  roughness: number;
  /** Half of what is compared between explanations: -ln of the evidence, amplitudes of doubts apart. */
  score: number;
}

/** Builds and solves the fit under an explanation; `from` a state nearby. */
export type Refit = (explained: Explained, from?: Fitted) => Fitted;

/** One reading or weighing that is doubted is left out; any other doubt is carried as an unknown amplitude. */
export function isCarried({ kind }: Doubt): boolean {
  return kind !== 'reading' && kind !== 'mass';
}

/** In the order of the unknown amplitudes. */
export function carriedDoubts(named: readonly Named[]): Doubt[] {
  return named.flatMap((entry) =>
    entry.kind === 'doubt' && isCarried(entry.suspicion.doubt) ? [entry.suspicion.doubt] : [],
  );
}
