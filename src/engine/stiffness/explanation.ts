/** What is held to have gone wrong on the bench, and the fit under it. */
import type { Datum } from './bench-model.ts';
import type { Doubt } from './doubts.ts';
import type { DoubtKind } from './fit-kinds.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import type { PreparedRequest } from './prepared-request.ts';
import type { Roughness } from './prior.ts';
import type { Suspicion } from './suspicion.ts';
import type { SwappedPair } from './swapped-loads.ts';

export type Named =
  /** `alternatives`: what explains the readings almost as well, at most one. */
  | { kind: 'doubt'; suspicion: Suspicion; alternatives: readonly Suspicion[] }
  | { kind: 'swap'; pair: SwappedPair }
  | { kind: 'test'; setup: number; test: number }
  | { kind: 'stand'; slip: StandSlip };

/**
 * Of pictures of one stand: the camera bumped, the clamp slipped before `setup`, a wrong weight, weights of two swapped,
 * the marks off level in all of them.
 */
export type StandSlip =
  | { kind: 'bump'; setup: number }
  | { kind: 'stand-slip'; setup: number }
  /** The picture bends as under so many times the stated weight; or, nearly as likely, that of `or` is wrong. */
  | { kind: 'stand-weight'; setup: number; factor: number; or?: number }
  | { kind: 'stand-swap'; setup: number; other: number }
  /** Turned back by so much. */
  | { kind: 'stand-lean'; setup: number; turnRad: number };

export interface Explained {
  /** With what is named put right, where that changes the request. */
  request: PreparedRequest;
  named: readonly Named[];
}

export interface Fitted {
  problem: FitProblem;
  best: MostProbable;
  roughness: Roughness;
  /** Half of what is compared between explanations: -ln of the evidence, amplitudes of doubts apart. */
  score: number;
}

/**
 * Builds and solves the fit under an explanation; `from` a state nearby. One that is still above `giveUpAt` when others
 * have long settled is left there: a likelier explanation is known.
 */
export type Refit = (explained: Explained, from?: Fitted, giveUpAt?: number) => Fitted;

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

/** A kind of slip and the rows of the request that it stands at. */
export interface SlipPlace {
  kind: DoubtKind | 'swap' | 'test' | StandSlip['kind'];
  paths: string[];
}

/** What is named, one list each: the likeliest first, then what explains the readings almost as well. */
export function slipPlaces({ named }: Explained, data: readonly Datum[]): SlipPlace[][] {
  return named.map((entry) => {
    if (entry.kind === 'test') return [{ kind: 'test', paths: [testPath(entry.setup, entry.test)] }];
    if (entry.kind === 'stand') {
      const { slip } = entry;
      const setups = slip.kind === 'stand-swap' ? [slip.other, slip.setup] : [slip.setup];
      return [{ kind: slip.kind, paths: setups.map((setup) => testPath(setup, 0)) }];
    }
    if (entry.kind === 'doubt')
      return [entry.suspicion, ...entry.alternatives].map(({ doubt }) => ({
        kind: doubt.kind,
        paths: doubtPaths(doubt, data),
      }));
    const { setup, first, second } = entry.pair;
    return [{ kind: 'swap', paths: [first, second].map((test) => testPath(setup, test)) }];
  });
}

function doubtPaths({ kind, data: at, setup, test }: Doubt, data: readonly Datum[]): string[] {
  if (kind === 'reading' || kind === 'mass' || kind === 'stretch') return [data[at[0]].path];
  if (kind === 'flag') return at.map((d) => data[d].path);
  return [test < 0 ? `setups[${setup}]` : testPath(setup, test)];
}

function testPath(setup: number, test: number): string {
  return `setups[${setup}].tests[${test}]`;
}
