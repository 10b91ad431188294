import type { Bench, Section } from './bench.ts';
import { type BenchFinding, bothLengths, doubt, grams, stop } from './bench-finding.ts';

/** Bounds outside which a value is taken for a slip; rod sections and blanks of every trade lie well inside. */
const sane = {
  sectionM: { min: 0.05, max: 4.5 },
  sectionKg: { min: 0.0003, max: 1 },
  /** Common practice, no source: overlaps of 20 to 90 mm. */
  overlapM: { min: 0.01, max: 0.15 },
  plugM: 0.2,
  gapM: 0.02,
} as const;

export function checkSections(bench: Bench): BenchFinding[] {
  const { sections } = bench;
  return [
    ...sections.flatMap(checkSection),
    ...sections.slice(0, -1).flatMap((section, index) => checkJoint(section, sections[index + 1])),
    ...sections.slice(1, -1).flatMap((section, index) => checkBothJoints(section, sections[index])),
    ...checkWholeMass(bench),
  ];
}

function checkSection(section: Section): BenchFinding[] {
  const at = `sections/${section.id}`;
  const { name, lengthM, massKg, balanceFromOwnTipM } = section;
  const found: BenchFinding[] = [];
  if (!(lengthM >= sane.sectionM.min && lengthM <= sane.sectionM.max)) {
    const message = `${name} is ${bothLengths(lengthM)} long; a section lies between 50 mm and 4.5 m. Check the unit.`;
    found.push(stop(`${at}/length`, message));
  }
  if (massKg !== undefined && !(massKg >= sane.sectionKg.min && massKg <= sane.sectionKg.max)) {
    found.push(stop(`${at}/mass`, massMessage(name, massKg)));
  }
  if (balanceFromOwnTipM !== undefined && !(balanceFromOwnTipM > 0 && balanceFromOwnTipM < lengthM)) {
    const message = `${name} balances at ${bothLengths(balanceFromOwnTipM)}, but is ${bothLengths(lengthM)} long; measure from this section's own tip-side end.`;
    found.push(stop(`${at}/balanceFromOwnTip`, message));
  }
  return found;
}

function massMessage(name: string, massKg: number): string {
  if (massKg > 1) return `${name} weighs ${massKg} kg; did you mean ${massKg} g?`;
  return `${name} weighs ${grams(massKg)}; a section weighs a gram or more. Check the unit.`;
}

function checkJoint(upper: Section, lower: Section): BenchFinding[] {
  const at = `sections/${upper.id}`;
  const { joint } = upper;
  if (!joint) {
    return [
      stop(`${at}/joint`, `Say how ${upper.name} joins ${lower.name}: sleeve, spigot, put-in or put-over.`),
    ];
  }
  return joint.kind === 'spigot' ? checkSpigot(at, upper) : checkOverlap(at, upper, lower);
}

function checkSpigot(at: string, { name, joint }: Section): BenchFinding[] {
  const { gapM, plugM } = joint ?? { gapM: 0, plugM: 0 };
  const found: BenchFinding[] = [];
  if (gapM > sane.gapM) {
    const message = `The gap below ${name} is ${bothLengths(gapM)}; a seated spigot shows 3 to 13 mm. Seat it, or check the unit.`;
    found.push(doubt(`${at}/spigotGap`, message));
  }
  if (plugM > sane.plugM) {
    found.push(
      doubt(
        `${at}/spigotLength`,
        `The spigot below ${name} is ${bothLengths(plugM)} long; 40 to 90 mm is usual.`,
      ),
    );
  }
  return found;
}

function checkOverlap(at: string, upper: Section, lower: Section): BenchFinding[] {
  const overlapM = upper.joint?.overlapM ?? 0;
  const shorter = Math.min(upper.lengthM, lower.lengthM);
  if (overlapM >= shorter) {
    const message = `${upper.name} overlaps ${lower.name} by ${bothLengths(overlapM)}, more than the ${bothLengths(shorter)} of the shorter one. Check the overlap.`;
    return [stop(`${at}/overlap`, message)];
  }
  if (overlapM >= sane.overlapM.min && overlapM <= sane.overlapM.max) return [];
  const message = `${upper.name} overlaps ${lower.name} by ${bothLengths(overlapM)}; 20 to 70 mm is usual. Measure how deep it seats.`;
  return [doubt(`${at}/overlap`, message)];
}

/** The two ferrules of a middle section must leave some of it between them. */
function checkBothJoints(section: Section, above: Section): BenchFinding[] {
  const taken = (above.joint?.overlapM ?? 0) + (section.joint?.overlapM ?? 0);
  if (taken < section.lengthM) return [];
  const message = `The ferrules at the two ends of ${section.name} overlap each other: ${bothLengths(taken)} on a section of ${bothLengths(section.lengthM)}. Check both overlaps.`;
  return [stop(`sections/${section.id}/overlap`, message)];
}

/** Scales of 0.1 g and one slip of the pen: a gram, or three parts in a hundred. */
function checkWholeMass({ sections, massKg }: Bench): BenchFinding[] {
  if (massKg === undefined) return [];
  if (massKg > 2) {
    return [stop('blank/-/mass', `The blank weighs ${massKg} kg; did you mean ${massKg} g?`)];
  }
  const masses = sections.map((section) => section.massKg);
  const known = masses.reduce<number>((sum, mass) => sum + (mass ?? 0), 0);
  const complete = masses.every((mass) => mass !== undefined);
  const off = complete ? Math.abs(known - massKg) : known - massKg;
  if (off <= Math.max(0.001, 0.03 * massKg)) return [];
  const sum = complete ? 'together' : 'those weighed';
  const message = `The sections ${sum} weigh ${grams(known)}, the whole blank ${grams(massKg)}. Weigh again, or leave out the whole.`;
  return [doubt('blank/-/mass', message)];
}
