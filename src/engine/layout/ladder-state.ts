/**
 * The bends of a ladder kept from one layout to the next. While guides move a little the mesh keeps its shape
 * and every load starts from its last bend; where they move far the mesh is made anew and the angles carried
 * over by their place on the blank.
 */
import { type BendAnswer, rebend } from '../bend/bend.ts';
import { makeWorkspace, type Workspace } from '../bend/equilibrium.ts';
import { followDefaults, followFromNearby, followLoad } from '../bend/follow.ts';
import { buildMesh, type Mesh, type PointMass } from '../bend/mesh.ts';
import type { Ladder } from './ladder-request.ts';

export interface LadderState {
  mesh: Mesh | undefined;
  /** Stations that the mesh's shape was chosen for. */
  shapedFor: readonly number[];
  /** One per load, angles of its last bend inside. */
  works: Workspace[];
  /** Loads whose workspace holds an equilibrium to start from. */
  bent: boolean[];
}

export function makeLadderState(): LadderState {
  return { mesh: undefined, shapedFor: [], works: [], bent: [] };
}

/** Rings nearer to each other, or to the rod's ends, than this make no span. */
const closestRingsM = 1e-3;

/**
 * Gives the state a mesh for these stations; throws where they do not ascend inside the rod. `holdShape`: the
 * mesh keeps its shape however far the guides moved, so that differences of readings are smooth.
 */
export function takeLayout(
  state: LadderState,
  ladder: Ladder,
  fromTipM: readonly number[],
  holdShape = false,
): void {
  checkStations(ladder, fromTipM);
  const before = state.mesh;
  const keepsShape =
    before !== undefined && (holdShape || nearShape(ladder.rod.lengthM, state.shapedFor, fromTipM));
  state.mesh = buildMesh(ladder.rod, [0, ...fromTipM], massesOf(ladder, fromTipM), {
    resolution: ladder.resolution,
    elementsPerPart: keepsShape ? before.elementsPerPart : undefined,
  });
  if (keepsShape) return;
  state.shapedFor = [...fromTipM];
  const works = ladder.loadings.map(() => makeWorkspace(state.mesh!));
  if (before) {
    works.forEach((work, load) => {
      if (state.bent[load]) carryAngles(before, state.works[load].theta, state.mesh!, work.theta);
    });
  }
  state.works = works;
  state.bent = works.map((_, load) => before !== undefined && state.bent[load] === true);
}

/** Bends the rod under one load of the ladder; the state at hand is left in `state.works[load]`. */
export function solveLoad(state: LadderState, ladder: Ladder, load: number): BendAnswer['status'] {
  const { buttAngleRad } = ladder.request;
  const solve = state.bent[load] ? rebend : followLoad;
  const { status } = solve(state.mesh!, ladder.loadings[load], buttAngleRad, state.works[load]);
  state.bent[load] = status !== 'not-converged';
  return status;
}

/** One Newton step from the bend at hand: true to first order in how far the guides moved. */
export function nudgeLoad(state: LadderState, ladder: Ladder, load: number): void {
  followFromNearby(state.mesh!, ladder.loadings[load], state.works[load], {
    ...followDefaults,
    toleranceRad: followDefaults.stepRad,
  });
}

export function massesOf(ladder: Ladder, fromTipM: readonly number[]): PointMass[] {
  const { guides, tipTop } = ladder.request;
  const masses = fromTipM.map((place, i) => ({ fromTipM: place, massKg: guides.massesKg?.[i] ?? 0 }));
  return [{ fromTipM: 0, massKg: tipTop.massKg ?? 0 }, ...masses].filter(({ massKg }) => massKg > 0);
}

function checkStations(ladder: Ladder, fromTipM: readonly number[]): void {
  const { count } = ladder.request.guides;
  if (fromTipM.length !== count) throw new Error(`${fromTipM.length} stations for ${count} guides`);
  let before = 0;
  for (const station of [...fromTipM, ladder.rod.lengthM]) {
    if (!(station - before >= closestRingsM)) throw new Error(`station ${station} after ${before}`);
    before = station;
  }
}

/** No part between rings is less than 0.6 or more than 1.6 times as long as when the shape was chosen. */
function nearShape(lengthM: number, shapedFor: readonly number[], fromTipM: readonly number[]): boolean {
  if (shapedFor.length !== fromTipM.length) return false;
  for (let i = 0; i <= fromTipM.length; i++) {
    const now = (fromTipM[i] ?? lengthM) - (fromTipM[i - 1] ?? 0);
    const then = (shapedFor[i] ?? lengthM) - (shapedFor[i - 1] ?? 0);
    if (!(now > 0.6 * then && now < 1.6 * then)) return false;
  }
  return true;
}

/** Angles read off the old nodes at the places of the new ones (both run from the clamp to the tip). */
function carryAngles(from: Mesh, fromAngles: Float64Array, to: Mesh, toAngles: Float64Array): void {
  let e = 1;
  for (let j = 0; j <= to.count; j++) {
    const place = to.fromTipM[j];
    while (e < from.count && from.fromTipM[e] > place) e++;
    const share = (from.fromTipM[e - 1] - place) / from.lengthM[e];
    toAngles[j] = fromAngles[e - 1] + share * (fromAngles[e] - fromAngles[e - 1]);
  }
}
