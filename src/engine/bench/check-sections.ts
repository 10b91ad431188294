import type { Bench, Section } from './bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';

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

function checkSection({ id, name: section, lengthM, massKg, balanceFromOwnTipM }: Section): BenchFinding[] {
  const at = `sections/${id}`;
  const found: BenchFinding[] = [];
  if (!within(lengthM, sane.sectionM)) {
    const { min: leastM, max: mostM } = sane.sectionM;
    found.push(stopAt(`${at}/length`, 'bench/section-length', { section, lengthM, leastM, mostM }));
  }
  if (massKg !== undefined && !within(massKg, sane.sectionKg)) {
    found.push(stopAt(`${at}/mass`, 'bench/section-mass', { section, massKg }));
  }
  const balanceM = balanceFromOwnTipM;
  if (balanceM !== undefined && !(balanceM > 0 && balanceM < lengthM)) {
    const values = { section, balanceM, lengthM };
    found.push(stopAt(`${at}/balanceFromOwnTip`, 'bench/balance-off-section', values));
  }
  return found;
}

function within(value: number, { min, max }: { min: number; max: number }): boolean {
  return value >= min && value <= max;
}

function checkJoint(upper: Section, lower: Section): BenchFinding[] {
  const at = `sections/${upper.id}`;
  const { joint } = upper;
  if (!joint) return [stopAt(`${at}/joint`, 'bench/joint-unsaid', { upper: upper.name, lower: lower.name })];
  return joint.kind === 'spigot' ? checkSpigot(at, upper) : checkOverlap(at, upper, lower);
}

function checkSpigot(at: string, { name: section, joint }: Section): BenchFinding[] {
  const { gapM, plugM } = joint ?? { gapM: 0, plugM: 0 };
  return [
    ...(gapM > sane.gapM ? [doubtAt(`${at}/spigotGap`, 'bench/spigot-gap-wide', { section, gapM })] : []),
    ...(plugM > sane.plugM ? [doubtAt(`${at}/spigotLength`, 'bench/spigot-long', { section, plugM })] : []),
  ];
}

function checkOverlap(at: string, { name, lengthM, joint }: Section, lower: Section): BenchFinding[] {
  const overlapM = joint?.overlapM ?? 0;
  const shorterM = Math.min(lengthM, lower.lengthM);
  const names = { upper: name, lower: lower.name, overlapM };
  if (overlapM >= shorterM) {
    return [stopAt(`${at}/overlap`, 'bench/overlap-over-section', { ...names, shorterM })];
  }
  return within(overlapM, sane.overlapM) ? [] : [doubtAt(`${at}/overlap`, 'bench/overlap-unusual', names)];
}

/** The two ferrules of a middle section must leave some of it between them. */
function checkBothJoints({ id, name: section, lengthM, joint }: Section, above: Section): BenchFinding[] {
  const takenM = (above.joint?.overlapM ?? 0) + (joint?.overlapM ?? 0);
  if (takenM < lengthM) return [];
  return [stopAt(`sections/${id}/overlap`, 'bench/joints-meet', { section, takenM, lengthM })];
}

/** Scales of 0.1 g and one slip of the pen: a gram, or three parts in a hundred. */
function checkWholeMass({ sections, massKg: wholeKg }: Bench): BenchFinding[] {
  if (wholeKg === undefined) return [];
  const path = 'blank/-/mass';
  if (wholeKg > 2) return [stopAt(path, 'bench/blank-mass-unit', { massKg: wholeKg })];
  const masses = sections.map((section) => section.massKg);
  const sumKg = masses.reduce<number>((sum, mass) => sum + (mass ?? 0), 0);
  const allWeighed = masses.every((mass) => mass !== undefined);
  const off = allWeighed ? Math.abs(sumKg - wholeKg) : sumKg - wholeKg;
  if (off <= Math.max(0.001, 0.03 * wholeKg)) return [];
  return [doubtAt(path, 'bench/masses-disagree', { sumKg, wholeKg, allWeighed })];
}
