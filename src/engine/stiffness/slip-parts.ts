/** Another slip that explains the readings nearly as well, and what would show which of the two happened. */
import { type Doubt, stationOf } from './doubts.ts';
import type { FitProblem } from './most-probable.ts';
import type { Suspicion } from './suspicion.ts';

export interface Shortly {
  orKind: Doubt['kind'] | 'flag-check';
  /** In metres, radians, radii or a share, as the kind goes. */
  orOffM: number;
  orTurnRad: number;
  orShare: number;
  orFromTipM: number;
  orTest: number;
}
export interface ToTell {
  /** `read test 2 again there`: the kind of check of either, with its test and place. */
  lookKind: LookKind;
  lookTest: number;
  lookFromTipM: number;
  elseKind: LookKind;
  elseTest: number;
  elseFromTipM: number;
}
export type LookKind = 'read' | 'flag' | 'flags' | 'slip' | 'load' | 'edge' | 'mass';

export function otherwise(
  suspicion: Suspicion,
  [other]: readonly Suspicion[],
  problem: FitProblem,
): Partial<Shortly & ToTell> {
  if (!other) return {};
  const { doubt, amplitude } = other;
  const { data, request } = problem.model;
  const datum = data[doubt.data[0]];
  const check = datum?.kind === 'station';
  const [look, besides] = [lookOf(suspicion, problem), lookOf(other, problem)];
  return {
    orKind: doubt.kind === 'reading' && check ? 'flag-check' : doubt.kind,
    orOffM: Math.abs(amplitude),
    orTurnRad: Math.abs(amplitude),
    orShare: Math.abs(amplitude),
    orFromTipM: doubt.kind === 'mass' || !datum ? 0 : stationOf(request.setups, datum),
    orTest: doubt.test + 1,
    lookKind: look.kind,
    lookTest: look.test,
    lookFromTipM: look.fromTipM,
    elseKind: besides.kind,
    elseTest: besides.test,
    elseFromTipM: besides.fromTipM,
  };
}

const looks = {
  stretch: 'read',
  reading: 'read',
  flag: 'flag',
  stations: 'flags',
  slip: 'slip',
  load: 'load',
  edge: 'edge',
  mass: 'mass',
} as const;

function lookOf({ doubt }: Suspicion, { model: { data, request } }: FitProblem) {
  const datum = data[doubt.data[0]];
  const kind: LookKind = datum?.kind === 'station' ? 'flag' : looks[doubt.kind];
  const fromTipM = kind === 'flag' && datum ? stationOf(request.setups, datum) : 0;
  return { kind, test: doubt.test + 1, fromTipM };
}
