import type { AssembledBlank } from './assemble.ts';
import type { Bench, Diameter, Section } from './bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';
import { diameterProfile } from './diameter-profile.ts';

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
  return found;
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
