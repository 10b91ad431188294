/**
 * Stations across ferrules.
 *
 * Geometry: with sections j above section k, overlaps o_j and spigot gaps g_j, the tip-side end of section k
 * stands at X_k = Σ (L_j − o_j + g_j), and a point a from that end at X_k + a.
 * A sleeve or put-over hides the first o of the lower section (its male end stands inside the upper one); a
 * put-in hides the last o of the upper section; a spigot hides nothing, but no section lies in its gap.
 */
import type { JointKind, Section } from './bench.ts';
import type { LineSide } from './line-side.ts';

export interface Zone {
  fromTipM: number;
  toTipM: number;
}
export interface AssembledSection {
  id: string;
  name: string;
  lengthM: number;
  /** Stations of the section's own two ends. */
  ends: Zone;
  /** The part of it that can be seen and marked when the blank is together. */
  visible: Zone;
  /** Where its guides stand round it, once chosen. */
  lineSide?: LineSide;
}
export interface AssembledJoint {
  /** Index of the section above it; the one below is the next. */
  upper: number;
  kind: JointKind;
  /** Overlap of a sleeve, put-in or put-over; visible gap of a spigot. */
  seat: Zone;
  /** Where the blank is doubled: the overlap, or the spigot's plug, about half of it on either side. */
  doubled: Zone;
  stiffnessRatio?: number;
}
export interface AssembledBlank {
  lengthM: number;
  sections: AssembledSection[];
  joints: AssembledJoint[];
}

/** Sections that were checked by `checkBench`, tip first; at least one. */
export function assembleBlank(sections: readonly Section[]): AssembledBlank {
  const ends = sectionEnds(sections);
  const joints = sections.slice(0, -1).map((section, index) => assembleJoint(section, index, ends));
  return {
    lengthM: ends.at(-1)?.toTipM ?? 0,
    joints,
    sections: sections.map(({ id, name, lengthM, lineSide }, index) => ({
      id,
      name,
      lengthM,
      ends: ends[index],
      visible: visiblePart(ends[index], joints[index - 1], joints[index]),
      ...(lineSide ? { lineSide } : {}),
    })),
  };
}

/** A mark on the assembled blank as the two ends of its own section see it. */
type LocatedMark =
  | { onSection: number; fromOwnTipM: number; fromOwnButtM: number }
  /** In a spigot's gap, where there is nothing to mark. */
  | { onSection: 'none'; gapOfJoint: number };

/** The section whose surface is seen at a station: never the one hidden inside a ferrule. */
export function locateMark(blank: AssembledBlank, fromTipM: number): LocatedMark {
  const last = blank.sections.length - 1;
  const onSection = blank.sections.findIndex(({ visible }, index) => {
    const belowStart = fromTipM >= visible.fromTipM || index === 0;
    return belowStart && (fromTipM <= visible.toTipM || index === last);
  });
  if (onSection < 0) {
    const gapOfJoint = blank.joints.findIndex(
      ({ seat }) => fromTipM > seat.fromTipM && fromTipM < seat.toTipM,
    );
    return { onSection: 'none', gapOfJoint };
  }
  const { ends } = blank.sections[onSection];
  return { onSection, fromOwnTipM: fromTipM - ends.fromTipM, fromOwnButtM: ends.toTipM - fromTipM };
}

/** The station of a point given from a section's own tip-side end. */
export function stationOf(blank: AssembledBlank, section: number, fromOwnTipM: number): number {
  return blank.sections[section].ends.fromTipM + fromOwnTipM;
}

function sectionEnds(sections: readonly Section[]): Zone[] {
  let nextTip = 0;
  return sections.map(({ lengthM, joint }) => {
    const ends = { fromTipM: nextTip, toTipM: nextTip + lengthM };
    nextTip = ends.toTipM - (joint?.overlapM ?? 0) + (joint?.gapM ?? 0);
    return ends;
  });
}

function assembleJoint({ joint }: Section, upper: number, ends: readonly Zone[]): AssembledJoint {
  const [upperButt, lowerTip] = [ends[upper].toTipM, ends[upper + 1].fromTipM];
  const seat = { fromTipM: Math.min(upperButt, lowerTip), toTipM: Math.max(upperButt, lowerTip) };
  const kind = joint?.kind ?? 'sleeve';
  const middle = (seat.fromTipM + seat.toTipM) / 2;
  const halfPlug = (joint?.plugM ?? 0) / 2;
  const doubled = kind === 'spigot' ? { fromTipM: middle - halfPlug, toTipM: middle + halfPlug } : seat;
  return { upper, kind, seat, doubled, stiffnessRatio: joint?.stiffnessRatio };
}

function visiblePart(ends: Zone, above: AssembledJoint | undefined, below: AssembledJoint | undefined): Zone {
  const hidesLower = above?.kind === 'sleeve' || above?.kind === 'put-over';
  return {
    fromTipM: above && hidesLower ? above.seat.toTipM : ends.fromTipM,
    toTipM: below?.kind === 'put-in' ? below.seat.fromTipM : ends.toTipM,
  };
}
