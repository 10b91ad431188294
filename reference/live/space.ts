/** The rod in space in a second program: scipy's boundary-value solve, and its determinant for leaving the plane. */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { bendInSpace, type SpaceAnswer, type SpaceRequest } from '../../src/engine/space/bend-in-space.ts';
import type { Check } from '../cases/check.ts';
import { type Accuracy, asShipped } from '../cases/unit-rod.ts';
import { turnsUnstableAt } from '../space/held-at-both-ends.ts';
import { type SpatialRod, spatialRods } from '../space/spatial-rods.ts';
import type { LiveGroup } from './groups.ts';
import { pythonWithScipy, scipyVersion } from './scipy.ts';

interface ScipySpaceBend {
  status: 'converged' | 'failed';
  reason?: string;
  points: { fromTipM: number; xM: number; yM: number; zM: number }[];
  rings: { lineAngleRad: number }[];
  gripTorqueNm: number;
  twistRad: number;
  seconds: number;
}

/** One answer per line of input, from a script of reference/scipy. */
function askScipy<T>(script: string, asked: readonly object[]): T[] {
  const python = pythonWithScipy();
  if (!python) throw new Error('no Python with scipy');
  const run = spawnSync(python, [resolve('reference', 'scipy', script)], {
    input: asked.map((one) => `${JSON.stringify(one)}\n`).join(''),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 300_000,
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  });
  if (run.status !== 0) throw new Error(`${script} ended with ${run.status}: ${run.stderr}`);
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as T);
}

/** Rings anywhere round the rod, rolled, pulled sideways, bowed to the side. */
export function scipySpaceGroup(
  rods: readonly SpatialRod[] = spatialRods,
  accuracy: Accuracy = asShipped,
): LiveGroup {
  const title = 'Rods in space against a boundary-value solve';
  const python = pythonWithScipy();
  if (!python) return { title, notRun: 'no Python with scipy on this machine (Debian: python3-scipy)' };
  const answers = askScipy<ScipySpaceBend>(
    'space_bvp.py',
    rods.map(({ request }) => ({ ...request, tolerance: 1e-4 })),
  );
  const checks = rods.flatMap(({ name, request }, i) => {
    if (answers[i].status !== 'converged') throw new Error(`${name}: ${answers[i].reason}`);
    return spaceChecks(
      name,
      bendInSpace(request, accuracy),
      answers[i],
      accuracy.place * request.rod.lengthM,
    );
  });
  const about = `scipy ${scipyVersion(python)}, solve_bvp on Kirchhoff’s forces and moments (scipy/space_bvp.py), residual 1e-4. Tip, largest difference of a line angle, torque at the clamp, twist of the tip. ${accuracy.resolution} elements.`;
  return { title, about, checks };
}

function spaceChecks(name: string, ours: SpaceAnswer, theirs: ScipySpaceBend, placeM: number): Check[] {
  const row = { source: 'scipy', theirs: 0 };
  const [p, q] = [ours.points[0], theirs.points[0]];
  const angles = ours.rings.map((ring, k) => Math.abs(ring.lineAngleRad - theirs.rings[k].lineAngleRad));
  return [
    {
      ...row,
      id: `${name}: tip`,
      quantity: 'distance between the two tips',
      unit: 'm',
      ours: Math.hypot(p.xM - q.xM, p.yM - q.yM, p.zM - q.zM),
      allowance: placeM,
    },
    {
      ...row,
      id: `${name}: line angles`,
      quantity: 'largest difference',
      unit: 'rad',
      ours: Math.max(...angles),
      allowance: 1e-4,
    },
    {
      ...row,
      id: `${name}: torque`,
      quantity: 'torque at the clamp',
      unit: 'N m',
      ours: ours.gripTorqueNm,
      theirs: theirs.gripTorqueNm,
      allowance: 1e-3 * Math.abs(theirs.gripTorqueNm),
    },
    {
      ...row,
      id: `${name}: twist`,
      quantity: 'twist of the tip',
      unit: 'rad',
      ours: p.twistRad,
      theirs: theirs.twistRad,
      allowance: 2e-5,
    },
  ];
}

/** A bow that is pushed straight stays in its plane up to a load that the determinant of its small turns gives too. */
export function leavesItsPlaneGroup({ resolution }: Accuracy = asShipped): LiveGroup {
  const title = 'A bow pushed straight leaves its plane';
  const python = pythonWithScipy();
  if (!python) return { title, notRun: 'no Python with scipy on this machine (Debian: python3-scipy)' };
  const bows = [
    { k0: 2, GJ: 0.3, low: 1, high: 2 },
    { k0: 3, GJ: 0.5, low: 1, high: 3 },
    { k0: 2.5, GJ: 0.3, low: 0.2, high: 2 },
  ];
  const theirs = askScipy<{ forceN: number }>('out_of_plane.py', bows);
  const checks = bows.map(
    ({ k0, GJ, low, high }, i): Check => ({
      id: `bow ${k0}, GJ ${GJ}`,
      quantity: 'load at which a small push makes it leave, FL²/EI',
      source: 'scipy',
      unit: '1',
      ours: turnsUnstableAt(
        (forceN) => bendInSpace(bowUnder(forceN, k0, GJ), { resolution }).stable,
        low,
        high,
      ),
      theirs: theirs[i].forceN,
      allowance: 1e-4 * theirs[i].forceN,
    }),
  );
  const about = `A uniform rod bowed up, clamped level, pulled down at its tip: the plane bend and the small turns out of its plane integrated by scipy ${scipyVersion(python)} (scipy/out_of_plane.py), beside the load at which the answer’s \`stable\` turns false. ${resolution} elements.`;
  return { title, about, checks };
}

function bowUnder(forceN: number, k0: number, GJ: number): SpaceRequest {
  return {
    rod: {
      lengthM: 1,
      stiffness: [{ fromTipM: 0, EINm2: 1 }],
      torsion: [{ fromTipM: 0, GJNm2: GJ }],
      restCurvature: [{ fromTipM: 0, perM: k0 }],
    },
    buttAngleRad: 0,
    load: { tip: { xN: 0, yN: -forceN } },
  };
}
