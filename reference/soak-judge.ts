/** What must hold of every bend, however odd the rod: used by the tests and by `npm run soak`. */
import { type BendAnswer, type BendRequest, bend, loadingOf } from '../src/engine/bend/bend.ts';
import { makeWorkspace } from '../src/engine/bend/equilibrium.ts';
import { followDefaults, followLoad } from '../src/engine/bend/follow.ts';
import { buildMesh } from '../src/engine/bend/mesh.ts';
import { rodTables } from '../src/engine/bend/rod.ts';

export interface Judged {
  status: BendAnswer['status'];
  reason?: string;
  iterations: number;
  /** Left out where all is well. */
  fault?: string;
}

export function judgeBend(request: BendRequest): Judged {
  const answer = bend(request);
  const { status, reason, iterations } = answer;
  return { status, reason: reason?.code, iterations, fault: faultOf(request, answer) };
}

function faultOf(request: BendRequest, answer: BendAnswer): string | undefined {
  const { points, rings, spans } = answer;
  const numbers = [
    ...points.flatMap((p) => [p.fromTipM, p.xM, p.yM, p.angleRad, p.curvaturePerM]),
    ...rings.flatMap((ring) => [ring.xM, ring.yM, ring.lineAngleRad]),
    ...spans.flatMap((span) => [span.gapM, span.extraBendPerM]),
    answer.residual,
  ];
  if (!numbers.every(Number.isFinite)) return 'a number is not finite';
  if (points.length < 101) return `${points.length} points`;
  if (answer.iterations > followDefaults.maxIterations + followDefaults.fallIterations + 12) {
    return `${answer.iterations} iterations`;
  }
  if (answer.status !== 'converged' && !answer.reason) return `${answer.status} without a reason`;
  const longest = points.slice(1).some((p, i) => {
    const apart = Math.hypot(p.xM - points[i].xM, p.yM - points[i].yM);
    return apart > (p.fromTipM - points[i].fromTipM) * (1 + 1e-9) + 1e-12;
  });
  if (longest) return 'the rod has grown longer';
  if (answer.status === 'converged' && answer.residual > residualAllowed(request)) {
    return `residual ${answer.residual} N·m`;
  }
  return undefined;
}

/** A millionth of the largest moment that the loads can make, or of the stiffest element's spring. */
function residualAllowed({ rod, masses = [], load }: BendRequest): number {
  const pullN = 2 * (load.line?.tensionN ?? 0) + Math.hypot(load.tip?.xN ?? 0, load.tip?.yN ?? 0);
  const heaviest = Math.max(0, ...(rod.massPerLength ?? []).map((row) => row.kgPerM));
  const massKg = heaviest * rod.lengthM + masses.reduce((sum, mass) => sum + mass.massKg, 0);
  const stiffest = Math.max(...rod.stiffness.map((row) => row.EINm2));
  return 1e-6 * ((pullN + 9.80665 * massKg) * rod.lengthM + stiffest / rod.lengthM);
}

/** Largest difference in angle between the bend and one whose load was raised in steps of a few degrees. */
export function followedInFineSteps(request: BendRequest): number {
  const rings = (request.guides ?? []).map((guide) => guide.fromTipM);
  const mesh = buildMesh(rodTables(request.rod), rings, request.masses ?? [], { resolution: 150 });
  const loading = loadingOf(request);
  const [usual, fine] = [followDefaults, { ...followDefaults, stepRad: 0.04, maxIterations: 40_000 }].map(
    (options) => {
      const work = makeWorkspace(mesh);
      return { work, followed: followLoad(mesh, loading, request.buttAngleRad, work, options) };
    },
  );
  if (usual.followed.status !== 'converged' || fine.followed.status !== 'converged') {
    // a branch that ends must end for both
    return usual.followed.status === fine.followed.status ? 0 : Number.POSITIVE_INFINITY;
  }
  return usual.work.theta.reduce((most, angle, j) => Math.max(most, Math.abs(angle - fine.work.theta[j])), 0);
}
