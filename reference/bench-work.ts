/** The work that `npm run bench` times, set up once: what a builder does, on an invented ten-guide fly rod. */
import { type BendRequest, bend, loadingOf, rebend } from '../src/engine/bend/bend.ts';
import { assemble, makeWorkspace, placeNodes } from '../src/engine/bend/equilibrium.ts';
import { followLoad } from '../src/engine/bend/follow.ts';
import { buildMesh } from '../src/engine/bend/mesh.ts';
import { readRings, readSpans } from '../src/engine/bend/reading.ts';
import { rodTables } from '../src/engine/bend/rod.ts';
import { makeLadder, readLadder } from '../src/engine/layout/ladder.ts';
import type { LadderRequest } from '../src/engine/layout/ladder-request.ts';
import type { LayoutRequest } from '../src/engine/layout/layout-request.ts';
import { factorChained, solveChained } from '../src/engine/numerics/chained-tridiagonal.ts';
import { seededNormal, seededRandom } from '../src/engine/numerics/seeded-random.ts';
import type { FitRequest } from '../src/engine/stiffness/request.ts';
import { realisticRods } from './cases/realistic-rods.ts';
import { syntheticBlank } from './synthetic-blank.ts';

/** Nine guides and a tip-top: ten rings. */
export const tenRings: BendRequest = realisticRods[0].request;

export function bendOnce(resolution: number): () => unknown {
  return () => bend(tenRings, { resolution });
}

/** A guide moved by up to 4 mm: mesh, bend and readings anew, from the bend at hand. */
export function moveGuide(resolution: number): () => unknown {
  const tables = rodTables(tenRings.rod);
  const guides = tenRings.guides!.map((guide) => guide.fromTipM);
  const masses = tenRings.masses ?? [];
  const loading = loadingOf(tenRings);
  const first = buildMesh(tables, guides, masses, { resolution });
  const work = makeWorkspace(first);
  followLoad(first, loading, tenRings.buttAngleRad, work);
  const random = seededRandom(5);
  return () => {
    const moved = [...guides];
    moved[1 + Math.floor(random() * (guides.length - 1))] += 0.008 * (random() - 0.5);
    const mesh = buildMesh(tables, moved, masses, { resolution, elementsPerPart: first.elementsPerPart });
    rebend(mesh, loading, tenRings.buttAngleRad, work);
    return [readRings(mesh, loading.line!, work), readSpans(mesh, loading.line!, -1, work)];
  };
}

function ladderRequest(guideCount: number): LadderRequest {
  const rod = tenRings.rod;
  return {
    rod,
    buttAngleRad: tenRings.buttAngleRad,
    reel: tenRings.reel!,
    guides: {
      count: guideCount,
      ringHeightsM: Array.from({ length: guideCount }, (_, i) => 0.004 + 0.0007 * i),
      massesKg: Array.from({ length: guideCount }, () => 0.0006),
      side: 'under',
    },
    tipTop: { ringHeightM: 0.004, massKg: 0.0005 },
    ladder: [0.5, 1, 2, 3.5, 6].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
    limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
  };
}

/** Five loads and all readings of nine guides, nothing kept from before. */
export function ladderOfFive(): () => unknown {
  const ladder = makeLadder(ladderRequest(9));
  const stations = tenRings.guides!.slice(1).map((guide) => guide.fromTipM);
  return () => readLadder(ladder, stations);
}

export function layoutOfTwelve(): LayoutRequest {
  const { ladder, limits, ...request } = ladderRequest(12);
  return { ...request, ladder, limits, firstFromTipM: 0.11, strippingFromTipM: 1.95 };
}

/** Four weights read at eight flags, ± 1.5 mm, the clamp half a degree off. */
export function fitOfThirtyTwo(): FitRequest {
  const { rod, outsideM } = syntheticBlank('SYN-FLY9', 200);
  const normal = seededNormal(seededRandom(11));
  const flags = [0, 0.13, 0.3, 0.55, 0.85, 1.2, 1.6, 2.05];
  const tilt = 0.009;
  const tests = [0, 0.03, 0.06, 0.1].map((massKg) => {
    const hung = massKg > 0 ? [{ fromTipM: 0, massKg }] : [];
    const { points } = bend({ rod, buttAngleRad: tilt, masses: hung, load: {} });
    const readings = flags.map((fromTipM) => {
      const next = Math.max(
        1,
        points.findIndex((point) => point.fromTipM >= fromTipM),
      );
      const [a, b] = [points[next - 1], points[next]];
      const u = (fromTipM - a.fromTipM) / (b.fromTipM - a.fromTipM);
      return { fromTipM, dropM: -(a.yM + u * (b.yM - a.yM)) + 0.0015 * normal() };
    });
    return { hung, readings, sigmaM: 0.0015 };
  });
  const massKg = rod.massPerLength!.slice(1).reduce((sum, row, i) => {
    const before = rod.massPerLength![i];
    return sum + 0.5 * (row.kgPerM + before.kgPerM) * (row.fromTipM - before.fromTipM);
  }, 0);
  return {
    blank: {
      lengthM: rod.lengthM,
      massKg,
      sweepSigmaPerM: 0,
      diameters: Array.from({ length: 8 }, (_, i) => {
        const fromTipM = (rod.lengthM * i) / 7;
        return { fromTipM, outsideM: outsideM(fromTipM) };
      }),
    },
    setups: [{ nominalAngleRad: 0, tiltSigmaRad: 0.0175, tests }],
  };
}

/** One Newton step of the bend, and the bare floor: a tridiagonal factorisation and solve with its sines and cosines. */
export function newtonStep(resolution: number): { step(): unknown; floor(): unknown; elements: number } {
  const mesh = buildMesh(
    rodTables(tenRings.rod),
    tenRings.guides!.map((guide) => guide.fromTipM),
    tenRings.masses ?? [],
    { resolution },
  );
  const work = makeWorkspace(mesh);
  const loading = loadingOf(tenRings);
  followLoad(mesh, loading, tenRings.buttAngleRad, work);
  const rhs = new Float64Array(mesh.count);
  const step = () => {
    placeNodes(mesh, loading.line, work);
    assemble(mesh, loading, 1, work);
    factorChained(work.hessian);
    for (let i = 0; i < mesh.count; i++) rhs[i] = -(work.bendGradient[i] + work.loadGradient[i]);
    solveChained(work.hessian, rhs, rhs);
    return rhs[0];
  };
  return { step, floor: bareFloor(mesh.count, work.theta), elements: mesh.count };
}

function bareFloor(n: number, theta: Float64Array): () => number {
  const diagonal = new Float64Array(n).fill(2.5);
  const off = new Float64Array(n).fill(-1);
  const pivot = new Float64Array(n);
  const x = new Float64Array(n);
  return () => {
    let turns = 0;
    for (let i = 1; i <= n; i++) {
      const angle = 0.5 * (theta[i - 1] + theta[i]);
      turns += Math.cos(angle) + Math.sin(angle);
    }
    pivot[0] = diagonal[0];
    x[0] = turns;
    for (let i = 1; i < n; i++) {
      const factor = off[i] / pivot[i - 1];
      pivot[i] = diagonal[i] - factor * off[i];
      x[i] = 1 - factor * x[i - 1];
    }
    x[n - 1] /= pivot[n - 1];
    for (let i = n - 2; i >= 0; i--) x[i] = (x[i] - off[i + 1] * x[i + 1]) / pivot[i];
    return x[0];
  };
}
