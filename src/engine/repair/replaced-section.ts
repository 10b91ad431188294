/**
 * A section replaced by a new one. What is seated above it moves with the difference in length; marks on the new
 * section itself keep their distance from the datum where there is room, and are given from its new ends.
 */
import { type AssembledBlank, assembleBlank, locateMark, type Zone } from '../bench/assemble.ts';
import type { Section } from '../bench/bench.ts';

interface ReplacedSection {
  sections: readonly Section[];
  /** Which, counted from the tip, from 0. */
  index: number;
  newLengthM: number;
  /** Of its joint to the section below, where that was measured anew. */
  newOverlapM?: number;
  guidesFromTipM: readonly number[];
}
export interface SectionMark {
  guide: number;
  section: string;
  wasFromTipM: number;
  wasFromOwnTipM: number;
  /** Undefined where the new blank has no surface there. */
  fromTipM: number | undefined;
  fromOwnTipM: number | undefined;
  /** Whether this guide's thread has to come off: it stood on the section that is gone. */
  rewrapped: boolean;
}
export interface SectionRepair {
  longerByM: number;
  /** Put together with the new section. */
  blank: AssembledBlank;
  /** The old section's two ends. */
  old: Zone;
  marks: SectionMark[];
}

export function replaceSection(input: ReplacedSection): SectionRepair {
  const { sections, index, guidesFromTipM } = input;
  const before = assembleBlank(sections);
  const after = assembleBlank(
    sections.map((section, i) => (i === index ? renewed(section, input) : section)),
  );
  return {
    longerByM: after.lengthM - before.lengthM,
    blank: after,
    old: before.sections[index].ends,
    marks: guidesFromTipM.map((station, i) => carried(before, after, index, station, i + 1)),
  };
}

function renewed(section: Section, { newLengthM, newOverlapM }: ReplacedSection): Section {
  const joint =
    section.joint && newOverlapM !== undefined ? { ...section.joint, overlapM: newOverlapM } : section.joint;
  return { ...section, lengthM: newLengthM, joint };
}

/** A guide on another section stays on its section; one on the new section keeps its station. */
function carried(
  before: AssembledBlank,
  after: AssembledBlank,
  index: number,
  wasFromTipM: number,
  guide: number,
): SectionMark {
  const was = locateMark(before, wasFromTipM);
  if (was.onSection === 'none')
    return {
      guide,
      section: '',
      wasFromTipM,
      wasFromOwnTipM: 0,
      fromTipM: undefined,
      fromOwnTipM: undefined,
      rewrapped: false,
    };
  const rewrapped = was.onSection === index;
  const fromTipM = rewrapped ? wasFromTipM : after.sections[was.onSection].ends.fromTipM + was.fromOwnTipM;
  const now = locateMark(after, fromTipM);
  const own = now.onSection === was.onSection ? now : undefined;
  return {
    guide,
    section: before.sections[was.onSection].name,
    wasFromTipM,
    wasFromOwnTipM: was.fromOwnTipM,
    fromTipM: own && fromTipM,
    fromOwnTipM: own?.fromOwnTipM,
    rewrapped,
  };
}
