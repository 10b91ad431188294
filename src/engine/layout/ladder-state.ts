/**
 * The bends of a ladder kept from one layout to the next. While guides move a little the mesh keeps its shape
 * and every load starts from its last bend; where they move far the mesh is made anew and the bends carried
 * over by their place on the blank.
 */
import type { Mesh, PointMass } from '../bend/mesh.ts';
import type { Ladder } from './ladder-request.ts';
import type { BendStatus, LoadBend } from './load-bend.ts';

export interface LadderState {
  mesh: Mesh | undefined;
  /** Stations that the mesh's shape was chosen for. */
  shapedFor: readonly number[];
  /** One per load. */
  bends: LoadBend[];
  /** Loads whose bend is an equilibrium to start from. */
  bent: boolean[];
}

export function makeLadderState(): LadderState {
  return { mesh: undefined, shapedFor: [], bends: [], bent: [] };
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
  const mesh = ladder.meshFor(
    [0, ...fromTipM],
    massesOf(ladder, fromTipM),
    keepsShape ? before.elementsPerPart : undefined,
  );
  state.mesh = mesh;
  if (keepsShape) return;
  state.shapedFor = [...fromTipM];
  state.bends = ladder.request.ladder.map((_, load) =>
    before && state.bent[load] ? state.bends[load].carriedTo(before, mesh) : ladder.bendUnder(load, mesh),
  );
  state.bent = state.bends.map((_, load) => before !== undefined && state.bent[load] === true);
}

/** Bends the rod under one load of the ladder; the bend at hand is left in `state.bends[load]`. */
export function solveLoad(state: LadderState, load: number): BendStatus {
  const bend = state.bends[load];
  const status = state.bent[load] ? bend.rebend(state.mesh!) : bend.follow(state.mesh!);
  state.bent[load] = status !== 'not-converged';
  return status;
}

function massesOf(ladder: Ladder, fromTipM: readonly number[]): PointMass[] {
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
