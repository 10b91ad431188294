/** A ladder whose rod stays in its plane. */
import { loadingOf } from '../bend/bend.ts';
import { buildMesh } from '../bend/mesh.ts';
import { rodTables } from '../bend/rod.ts';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import type { Ladder, LadderLoad, LadderRequest } from './ladder-request.ts';
import { planarLoadBend } from './load-bend.ts';

export function planarLadder(request: LadderRequest, { resolution }: { resolution: number }): Ladder {
  const { guides, tipTop, buttAngleRad, reel } = request;
  const rings = [tipTop.ringHeightM, ...guides.ringHeightsM].map((ringHeightM) => ({
    fromTipM: 0,
    ringHeightM,
    side: guides.side,
  }));
  const loadings = request.ladder.map((load) =>
    loadingOf({ buttAngleRad, reel, guides: rings, load: { line: load, tip: tiedForce(load) } }),
  );
  const rod = rodTables(request.rod);
  const held = { buttAngleRad, side: guides.side, outside: outsideOnTop(request) };
  return {
    request,
    rod,
    meshFor: (fromTipM, masses, elementsPerPart) =>
      buildMesh(rod, fromTipM, masses, { resolution, elementsPerPart }),
    bendUnder: (load, mesh) => planarLoadBend(mesh, loadings[load], held),
  };
}

/** Undefined where the line cannot meet the blank, or nobody asks. */
function outsideOnTop({ guides, contact }: LadderRequest) {
  if (guides.side !== 'over' || !contact) return undefined;
  const { diameters } = contact;
  return piecewiseLinear(
    diameters.map(({ fromTipM }) => fromTipM),
    diameters.map(({ outsideM }) => outsideM),
  );
}

function tiedForce(load: LadderLoad): { xN: number; yN: number } | undefined {
  const { tiedN = 0, pullAngleRad } = load;
  if (tiedN === 0) return undefined;
  return { xN: tiedN * Math.cos(pullAngleRad), yN: tiedN * Math.sin(pullAngleRad) };
}
