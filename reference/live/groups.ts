/** The six realistic rods in a second program: rows for the report, or why they were not run. */
import { type BendRequest, bend } from '../../src/engine/bend/bend.ts';
import type { Check, CheckGroup } from '../cases/check.ts';
import { type RealisticRod, realisticRods } from '../cases/realistic-rods.ts';
import { type Accuracy, asShipped } from '../cases/unit-rod.ts';
import { placeAt, type RodPlaces } from '../statics.ts';
import { calculixBend, calculixVersion, hasCalculix, withRowsAtCorners } from './calculix.ts';
import { pythonWithScipy, scipyBends, scipyVersion } from './scipy.ts';

export type LiveGroup = CheckGroup | { title: string; notRun: string };

/** The same rods with a line that rubs in its rings. */
export const rubbingRods: RealisticRod[] = realisticRods
  .filter(({ name }) => /spinning|casting/.test(name))
  .flatMap(({ name, request }) =>
    (['in', 'out'] as const).map((direction) => ({
      name: `${name}, friction 0.25, line ${direction}`,
      request: { ...request, friction: { coefficient: 0.25, direction } },
    })),
  );

/** Line through rings off the axis, as a boundary-value problem of statics. */
export function scipyGroup(
  rods: readonly RealisticRod[] = [...realisticRods, ...rubbingRods],
  accuracy: Accuracy = asShipped,
): LiveGroup {
  const title = 'Six realistic rods against a boundary-value solve';
  const python = pythonWithScipy();
  if (!python) return { title, notRun: 'no Python with scipy on this machine (Debian: python3-scipy)' };
  const answers = scipyBends(
    python,
    rods.map(({ request }) => ({ ...request, tolerance: 1e-4 })),
  );
  const checks = rods.flatMap(({ name, request }, i) => {
    if (answers[i].status !== 'converged') throw new Error(`${name}: ${answers[i].reason}`);
    return shapeChecks(`scipy: ${name}`, request, answers[i], accuracy);
  });
  const about = `scipy ${scipyVersion(python)}, solve_bvp on forces and moments (scipy/rod_bvp.py), residual 1e-4; line, masses, weight, natural bow, ferrules, friction. Largest distance between the two shapes anywhere on the rod, and the tip. ${accuracy.resolution} elements.`;
  return { title, about, checks };
}

/** Rings on the axis; the line's forces handed in and checked against those of CalculiX's own shape. */
export function calculixGroup(
  rods: readonly RealisticRod[] = realisticRods,
  accuracy: Accuracy = asShipped,
): LiveGroup {
  const title = 'Six realistic rods against a finite-element program';
  if (!hasCalculix()) return { title, notRun: 'no ccx on this machine (Debian: calculix-ccx)' };
  const elements = 30;
  const checks = rods.flatMap(({ name, request }) => {
    const onAxis = withRowsAtCorners(withRingsOnAxis(request), elements);
    const ours = bend(onAxis, { resolution: accuracy.resolution });
    const theirs = calculixBend(onAxis, ours, elements);
    const force: Check = {
      id: `CalculiX: ${name}: line force`,
      quantity:
        'largest change of a ring force between the shape handed in and the one found, share of the tension',
      source: 'CalculiX',
      unit: '1',
      ours: theirs.forceChange,
      theirs: 0,
      allowance: 1e-3,
    };
    return [...shapeChecks(`CalculiX: ${name}`, onAxis, theirs, accuracy), force];
  });
  const about = `CalculiX ${calculixVersion()}, ${elements} B32R elements and those that rings and masses add, NLGEOM (live/calculix.ts); rings moved onto the axis. Largest distance between the two shapes anywhere on the rod, and the tip. ${accuracy.resolution} elements of ours.`;
  return { title, about, checks };
}

function withRingsOnAxis(request: BendRequest): BendRequest {
  return {
    ...request,
    guides: request.guides?.map((guide) => ({ ...guide, ringHeightM: 0 })),
    reel: request.reel && { ...request.reel, offsetM: 0 },
  };
}

function shapeChecks(id: string, request: BendRequest, theirs: RodPlaces, accuracy: Accuracy): Check[] {
  const ours = bend(request, { resolution: accuracy.resolution });
  if (ours.status !== 'converged') throw new Error(`${id}: ${ours.reason}`);
  const apart = theirs.points.reduce((most, point) => {
    const own = placeAt(ours, point.fromTipM);
    return Math.max(most, Math.hypot(own.xM - point.xM, own.yM - point.yM));
  }, 0);
  const allowance = accuracy.place * request.rod.lengthM;
  const row = { source: id.slice(0, id.indexOf(':')), unit: 'm', allowance };
  return [
    {
      ...row,
      id: `${id}: anywhere`,
      quantity: 'largest distance between the shapes',
      ours: apart,
      theirs: 0,
    },
    { ...row, id: `${id}: tip x`, quantity: 'tip', ours: ours.points[0].xM, theirs: theirs.points[0].xM },
    { ...row, id: `${id}: tip y`, quantity: 'tip', ours: ours.points[0].yM, theirs: theirs.points[0].yM },
  ];
}
