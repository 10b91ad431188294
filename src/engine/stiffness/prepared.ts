/** The request as the fit works on it: traced curves stand as clamps among the clamps. */

import { standCurves } from './curve-stand.ts';
import type { PreparedClamp, PreparedRequest } from './prepared-request.ts';
import type { FitRequest } from './request.ts';

export function prepared({ blank, setups }: FitRequest): PreparedRequest {
  const { clamps, driftSigmas } = standCurves(setups, blank.lengthM);
  return {
    blank,
    setups: setups.map((setup, s) => (setup.kind === 'curve' ? clampOrThrow(clamps, s) : setup)),
    driftSigmas,
  };
}

function clampOrThrow(clamps: ReadonlyMap<number, PreparedClamp>, setup: number): PreparedClamp {
  const clamp = clamps.get(setup);
  if (!clamp) throw new Error(`the traced curve of set-up ${setup} belongs to no stand`);
  return clamp;
}
