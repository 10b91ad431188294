import type { AssembledBlank } from './assemble.ts';
import type { Bench, Diameter, Section } from './bench.ts';
import { type BenchFinding, bothLengths, doubt, stop } from './bench-finding.ts';
import { diameterProfile } from './diameter-profile.ts';

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
  return found;
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
