/** Another slip that explains the readings nearly as well, and what would show which of the two happened. */
import { stationOf } from './doubts.ts';
import type { LookKind, Shortly, ToTell } from './fit-kinds.ts';
import type { FitProblem } from './most-probable.ts';
import type { Suspicion } from './suspicion.ts';

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
    orTest: (doubt.kind === 'sway' ? doubt.setup : doubt.test) + 1,
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
  sway: 'still',
} as const;

function lookOf({ doubt }: Suspicion, { model: { data, request } }: FitProblem) {
  const datum = data[doubt.data[0]];
  const kind: LookKind = datum?.kind === 'station' ? 'flag' : looks[doubt.kind];
  const fromTipM = kind === 'flag' && datum ? stationOf(request.setups, datum) : 0;
  return { kind, test: doubt.test + 1, fromTipM };
}
