/**
 * Rods that leave their plane, in CalculiX: the 45° bend, and a tapered rod that is bowed, heavy and pushed sideways. Its
 * square beam has a twisting stiffness of its own, which is measured first by a small push out of a bow's plane
 * (Castigliano); the engine is then given that GJ.
 */

import type { BendRequest } from '../../src/engine/bend/bend.ts';
import { bendInSpace, type SpaceRequest } from '../../src/engine/space/bend-in-space.ts';
import { inPlane } from '../../src/engine/space/planar.ts';
import type { Check } from '../cases/check.ts';
import { realisticRods } from '../cases/realistic-rods.ts';
import { type Accuracy, asShipped } from '../cases/unit-rod.ts';
import {
  beamNodes,
  calculixVersion,
  hasCalculix,
  movedUnder,
  type NodalLoad,
  weights,
  withRowsAtCorners,
} from './calculix.ts';
import type { LiveGroup } from './groups.ts';

const elements = 20;
/** Thinner beams or smaller tolerances do not settle in CalculiX when they twist; stretch and shear stay below 1e-4. */
const beam = { slenderness: 100, residual: 1e-3, correction: 1e-2 };

export function calculixSpaceGroup({ resolution }: Accuracy = asShipped): LiveGroup {
  const title = 'Rods out of their plane against a finite-element program';
  if (!hasCalculix()) return { title, notRun: 'no ccx on this machine (Debian: calculix-ccx)' };
  const ratio = twistRatioOfBeam();
  const cases = [
    { name: 'the 45° bend', request: bow(600 / 8.333e5) },
    { name: 'spinning rod, bowed, pushed sideways', request: pushedSideways() },
  ];
  const checks = cases.flatMap(({ name, request }) => {
    // the same rod to the last digit: rows at the corners of the beams
    const { stiffness } = flat(request).rod;
    const rod = {
      ...request.rod,
      stiffness,
      torsion: stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: ratio * EINm2 })),
    };
    const ours = bendInSpace({ ...request, rod }, { resolution });
    const theirs = tipOf(request);
    const { xM, yM, zM } = ours.points[0];
    const row = { source: 'CalculiX', unit: 'm', quantity: 'tip', allowance: 2e-4 * request.rod.lengthM };
    return [
      { ...row, id: `${name}: x`, ours: xM, theirs: theirs.xM },
      { ...row, id: `${name}: y`, ours: yM, theirs: theirs.yM },
      { ...row, id: `${name}: z`, ours: zM, theirs: theirs.zM },
    ] satisfies Check[];
  });
  const about = `CalculiX ${calculixVersion()}, ${elements} B32R elements of square section, NLGEOM (live/calculix-space.ts); its GJ/EI was measured first: ${ratio.toFixed(4)} (0.8436 by Saint-Venant). ${resolution} elements of ours; allowed 2e-4 of the length.`;
  return { title, about, checks };
}

/** Radius 1 through 45°, EI 1, pushed to the right. */
function bow(forceN: number): SpaceRequest {
  const scale = 100 ** 2;
  return {
    rod: {
      lengthM: Math.PI / 4,
      stiffness: [{ fromTipM: 0, EINm2: 1 }],
      torsion: [{ fromTipM: 0, GJNm2: 1 }],
      restCurvature: [{ fromTipM: 0, perM: 1 }],
    },
    buttAngleRad: 0,
    load: { tip: { xN: 0, yN: 0, zN: forceN * scale } },
  };
}

/** A tapered rod with its own weight and masses, bowed up, its tip pushed to the right and down. */
function pushedSideways(): SpaceRequest {
  const { request } = realisticRods.find(({ name }) => /spinning/.test(name)) ?? realisticRods[0];
  const { rod, buttAngleRad, masses } = request;
  return {
    rod: {
      ...rod,
      torsion: [{ fromTipM: 0, GJNm2: 1 }],
      restCurvature: [
        { fromTipM: 0, perM: 0.5 },
        { fromTipM: rod.lengthM, perM: 0.1 },
      ],
    },
    buttAngleRad,
    masses,
    load: { tip: { xN: 0, yN: -0.8, zN: 1.5 } },
  };
}

/** The rod without what leaves its plane: mesh, section and own weight are planar. */
function flat(request: SpaceRequest): BendRequest {
  const { tip } = request.load;
  const load = { tip: tip && { xN: tip.xN, yN: tip.yN } };
  const planar = inPlane({ ...request, load });
  if (!planar) throw new Error('the unloaded rod is not plane');
  return withRowsAtCorners(planar, elements);
}

function tipOf(request: SpaceRequest): { xM: number; yM: number; zM: number } {
  const planar = flat(request);
  const nodes = beamNodes(planar, elements);
  const loads: NodalLoad[] = weights(planar, nodes);
  const tip = loads[loads.length - 1];
  tip.z = (tip.z ?? 0) + (request.load.tip?.zN ?? 0);
  const { moved } = movedUnder(planar, nodes, loads, beam);
  const { xM, yM, zM = 0 } = moved[moved.length - 1];
  return { xM, yM, zM };
}

/** GJ/EI of CalculiX's square beam: δ/F of a small push, less the bending's part, is the twist's. */
function twistRatioOfBeam(): number {
  const pushed = bow(1e-8);
  const force = pushed.load.tip?.zN ?? 0;
  const angle = Math.PI / 4;
  const planar = flat(pushed);
  const nodes = beamNodes(planar, elements);
  const loads: NodalLoad[] = nodes.map(() => ({ x: 0, y: 0 }));
  loads[loads.length - 1].z = force;
  const { moved } = movedUnder(planar, nodes, loads, beam);
  const bending = angle / 2 - Math.sin(2 * angle) / 4;
  const twisting = 1.5 * angle - 2 * Math.sin(angle) + Math.sin(2 * angle) / 4;
  return twisting / ((moved[moved.length - 1].zM ?? 0) / force - bending);
}
