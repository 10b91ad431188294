import { type AssembledBlank, stationOf } from './assemble.ts';
import type { Bench, Diameter, JointKind, Section } from './bench.ts';
import { type BenchFinding, bothLengths, doubt, stop } from './bench-finding.ts';
import { diameterProfile } from './diameter-profile.ts';
import { oddOf } from './odd-diameter.ts';

/** Outside these a diameter is taken for a slip: tips of 1.2 mm, surf butts of 25 mm. */
const sane = { minM: 0.0006, maxM: 0.045 } as const;
/** A calliper on a clear coat. */
const calliperM = 0.0001;

export function checkDiameters(bench: Bench, blank: AssembledBlank): BenchFinding[] {
  const found = bench.sections.flatMap(checkSectionDiameters);
  if (found.some(({ severity }) => severity === 'stop')) return found;
  if (diameterProfile(bench.sections, blank).length < 2) {
    const message =
      'Measure the diameter at least at the tip and at the butt, better three times a section: it is the first guess of the stiffness.';
    found.push(doubt('diameters', message));
  }
  return [...found, ...checkJointSides(bench, blank), ...checkAlongBlank(bench, blank, found)];
}

/** Of all that are seen on the assembled blank, the one that the others contradict. */
function checkAlongBlank(bench: Bench, blank: AssembledBlank, found: BenchFinding[]): BenchFinding[] {
  const odd = oddOf(bench.sections, blank);
  const row = odd && rowAt(bench.sections, blank, odd.fromTipM);
  if (!odd || !row || found.some(({ path }) => path === `diameters/${row.id}/outside`)) return [];
  const message = `${bothLengths(odd.outsideM)} does not lie on this blank: the other diameters say about ${bothLengths(odd.toldM)} there. Measure it again. The fit leaves it out until then.`;
  return [doubt(`diameters/${row.id}/outside`, message)];
}

function rowAt(sections: readonly Section[], blank: AssembledBlank, fromTipM: number): Diameter | undefined {
  return sections
    .flatMap(({ diameters }, index) =>
      diameters.map((row) => ({ row, offM: Math.abs(stationOf(blank, index, row.fromOwnTipM) - fromTipM) })),
    )
    .sort((a, b) => a.offM - b.offM)[0]?.row;
}

/** Upper side less lower side of a joint: up to two walls where one goes into the other. Common practice, no source. */
const sidesM: Record<JointKind, [least: number, most: number]> = {
  sleeve: [-0.0005, 0.0009],
  'put-over': [-0.0005, 0.0009],
  spigot: [-0.0005, 0.0005],
  'put-in': [-0.0009, 0.0005],
};
/** Diameters this near to a joint count as its sides. */
const besideJointM = 0.035;

function checkJointSides({ sections }: Bench, blank: AssembledBlank): BenchFinding[] {
  return sections.slice(0, -1).flatMap(({ name, joint, diameters }, index) => {
    const { ends, visible } = blank.sections[index];
    const below = blank.sections[index + 1].visible;
    const upper = diameters.findLast(
      (row) =>
        Math.min(ends.toTipM, visible.toTipM) - stationOf(blank, index, row.fromOwnTipM) < besideJointM,
    );
    const lower = sections[index + 1].diameters.find((row) => {
      const beyondM = stationOf(blank, index + 1, row.fromOwnTipM) - below.fromTipM;
      return beyondM >= -1e-9 && beyondM < besideJointM;
    });
    if (!joint || !upper || !lower) return [];
    const [least, most] = sidesM[joint.kind];
    const byM = upper.outsideM - lower.outsideM;
    if (byM >= least && byM <= most) return [];
    const message = `At the ${joint.kind} under ${name} the two sides measure ${bothLengths(upper.outsideM)} and ${bothLengths(lower.outsideM)}: so much such a joint seldom differs. Measure both sides again.`;
    return [doubt(`diameters/${lower.id}/outside`, message)];
  });
}

function checkSectionDiameters(section: Section): BenchFinding[] {
  const outside = section.diameters.flatMap((row) => checkOne(section, row));
  if (outside.length > 0) return outside;
  const inOrder = [...section.diameters].sort((a, b) => a.fromOwnTipM - b.fromOwnTipM);
  return inOrder.slice(1).flatMap((row, index) => checkTaper(section, inOrder[index], row));
}

function checkOne({ name, lengthM }: Section, { id, fromOwnTipM, outsideM }: Diameter): BenchFinding[] {
  if (fromOwnTipM < 0 || fromOwnTipM > lengthM + 1e-6) {
    const message = `${bothLengths(fromOwnTipM)} is not on ${name}, which is ${bothLengths(lengthM)} long; measure from this section's own tip-side end.`;
    return [stop(`diameters/${id}/fromOwnTip`, message)];
  }
  if (outsideM >= sane.minM && outsideM <= sane.maxM) return [];
  const message = `A diameter of ${bothLengths(outsideM)} on ${name} is no blank's; check the unit.`;
  return [stop(`diameters/${id}/outside`, message)];
}

function checkTaper({ name }: Section, upper: Diameter, lower: Diameter): BenchFinding[] {
  if (lower.outsideM >= upper.outsideM - calliperM) return [];
  const message = `${name} grows towards the tip: ${bothLengths(upper.outsideM)} at ${bothLengths(upper.fromOwnTipM)}, but ${bothLengths(lower.outsideM)} at ${bothLengths(lower.fromOwnTipM)} further down. Measure again, or swap the two.`;
  return [doubt(`diameters/${lower.id}/outside`, message)];
}
