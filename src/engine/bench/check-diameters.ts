import { type AssembledBlank, stationOf } from './assemble.ts';
import type { Bench, Diameter, JointKind, Section } from './bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';
import { diameterProfile, diameterRowAt } from './diameter-profile.ts';
import { oddOf } from './odd-diameter.ts';

/** Outside these a diameter is taken for a slip: tips of 1.2 mm, surf butts of 25 mm. */
const sane = { minM: 0.0006, maxM: 0.045 } as const;
/** A calliper on a clear coat. */
const calliperM = 0.0001;

export function checkDiameters(bench: Bench, blank: AssembledBlank): BenchFinding[] {
  const found = bench.sections.flatMap(checkSectionDiameters);
  if (found.some(({ severity }) => severity === 'stop')) return found;
  if (diameterProfile(bench.sections, blank).length < 2) {
    found.push(doubtAt('diameters', 'bench/diameters-few', {}));
  }
  return [...found, ...checkJointSides(bench, blank), ...checkAlongBlank(bench, blank, found)];
}

/** Of all that are seen on the assembled blank, the one that the others contradict. */
function checkAlongBlank(bench: Bench, blank: AssembledBlank, found: BenchFinding[]): BenchFinding[] {
  const odd = oddOf(bench.sections, blank);
  const row = odd && diameterRowAt(bench.sections, blank, odd.fromTipM);
  if (!odd || !row || found.some(({ path }) => path === `diameters/${row.id}/outside`)) return [];
  const { outsideM, toldM } = odd;
  return [doubtAt(`diameters/${row.id}/outside`, 'bench/diameter-odd', { outsideM, toldM })];
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
    const sides = { section: name, joint: joint.kind, upperM: upper.outsideM, lowerM: lower.outsideM };
    return [doubtAt(`diameters/${lower.id}/outside`, 'bench/joint-sides-differ', sides)];
  });
}

function checkSectionDiameters(section: Section): BenchFinding[] {
  const outside = section.diameters.flatMap((row) => checkOne(section, row));
  if (outside.length > 0) return outside;
  const inOrder = [...section.diameters].sort((a, b) => a.fromOwnTipM - b.fromOwnTipM);
  return inOrder.slice(1).flatMap((row, index) => checkTaper(section, inOrder[index], row));
}

function checkOne(
  { name: section, lengthM }: Section,
  { id, fromOwnTipM, outsideM }: Diameter,
): BenchFinding[] {
  if (fromOwnTipM < 0 || fromOwnTipM > lengthM + 1e-6) {
    const values = { section, fromOwnTipM, lengthM };
    return [stopAt(`diameters/${id}/fromOwnTip`, 'bench/diameter-off-section', values)];
  }
  if (outsideM >= sane.minM && outsideM <= sane.maxM) return [];
  return [stopAt(`diameters/${id}/outside`, 'bench/diameter-size', { section, outsideM })];
}

function checkTaper({ name: section }: Section, upper: Diameter, lower: Diameter): BenchFinding[] {
  if (lower.outsideM >= upper.outsideM - calliperM) return [];
  const values = {
    section,
    upperOutsideM: upper.outsideM,
    upperM: upper.fromOwnTipM,
    lowerOutsideM: lower.outsideM,
    lowerM: lower.fromOwnTipM,
  };
  return [doubtAt(`diameters/${lower.id}/outside`, 'bench/diameters-taper', values)];
}
