/**
 * A uniform rod under a force that stays square to the tip and an end moment. Neither has a place in a rod
 * builder's bench, so they are added here to the engine's own gradient and Hessian: Newton, the load raised in
 * steps. The follower force makes the system unsymmetric by one column, solved by Sherman & Morrison (1950).
 */
import { assemble, makeWorkspace, placeNodes, type Workspace } from '../../src/engine/bend/equilibrium.ts';
import { buildMesh, type Mesh } from '../../src/engine/bend/mesh.ts';
import { rodTables } from '../../src/engine/bend/rod.ts';
import { factorChained, solveChained } from '../../src/engine/numerics/chained-tridiagonal.ts';
import { type Accuracy, uniformRod } from './unit-rod.ts';

export interface TipLoad {
  /** Turned by +90° from the tip's direction. */
  followerN: number;
  momentNm: number;
}

export function tipUnder(load: TipLoad, { resolution }: Accuracy) {
  const mesh = buildMesh(rodTables(uniformRod), [], [], { resolution });
  const work = makeWorkspace(mesh);
  const steps = Math.ceil(4 * Math.abs(load.followerN) + 4 * Math.abs(load.momentNm));
  for (let step = 1; step <= steps; step++) {
    const share = step / steps;
    newton(mesh, work, { followerN: share * load.followerN, momentNm: share * load.momentNm });
  }
  const n = mesh.count;
  return { xM: work.xM[n], yM: work.yM[n], angleRad: work.theta[n] };
}

function newton(mesh: Mesh, work: Workspace, { followerN, momentNm }: TipLoad): void {
  const n = mesh.count;
  for (let iteration = 0; iteration < 30; iteration++) {
    const tip = work.theta[n];
    const loading = {
      line: undefined,
      tipXN: -followerN * Math.sin(tip),
      tipYN: followerN * Math.cos(tip),
    };
    placeNodes(mesh, undefined, work);
    assemble(mesh, loading, 1, work);
    factorChained(work.hessian);
    const step = work.bendGradient.map((bending, i) => -(bending + work.loadGradient[i]));
    step[n - 1] += momentNm;
    solveChained(work.hessian, step, step);
    const column = columnOfTurn(mesh, work, followerN, tip);
    solveChained(work.hessian, column, column);
    const factor = step[n - 1] / (1 + column[n - 1]);
    let largest = 0;
    for (let i = 0; i < n; i++) {
      const turn = step[i] - factor * column[i];
      work.theta[i + 1] += turn;
      largest = Math.max(largest, Math.abs(turn));
    }
    if (largest < 1e-12) {
      placeNodes(mesh, undefined, work);
      return;
    }
  }
  throw new Error(`no equilibrium under a follower force of ${followerN} and a moment of ${momentNm}`);
}

/** d(gradient)/d(tip angle) through the turning of the force. */
function columnOfTurn(mesh: Mesh, work: Workspace, followerN: number, tip: number): Float64Array {
  const turned = { line: undefined, tipXN: -followerN * Math.cos(tip), tipYN: -followerN * Math.sin(tip) };
  const { loadGradient } = work;
  const kept = Float64Array.from(loadGradient);
  const column = new Float64Array(mesh.count);
  const { cos, sin } = work;
  let above = 0;
  for (let e = mesh.count; e >= 1; e--) {
    const turning = mesh.lengthM[e] * (cos[e] * turned.tipYN - sin[e] * turned.tipXN);
    column[e - 1] = -0.5 * (turning + above);
    above = turning;
  }
  loadGradient.set(kept);
  return column;
}
