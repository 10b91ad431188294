/**
 * The chosen layout as the builder marks it: from the datum (the blank's tip, which is the ring end of the
 * tip-top's tube) and from each section's own two ends, to the tick of his tape.
 */

import { type AssembledBlank, locateMark } from '../bench/assemble.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { LineSide } from '../bench/line-side.ts';
import { type Finding, findingsOf } from '../finding.ts';
import { type Zone, zoneAt, zonesOfRing } from '../layout/guide-moves.ts';
import { roundToTape, type TapeStep, tickM } from '../units/tape-step.ts';

/** Where a foot stands round the blank, from the top towards the side that the spiral goes. */
export interface PlaceRound {
  fromTopRad: number;
  by: 'right' | 'left';
  /** Diameter of the blank there. */
  outsideM: number;
}
/** The same as a second line to mark, measured round the surface. */
export interface MarkRound extends PlaceRound {
  fromTopLineM: number;
  fromUnderLineM: number;
}
export interface GuideToMark {
  name: string;
  fromTipM: number;
  /** Along the blank, for the zones that are kept free; none where left out. */
  footM?: number;
  /** Left out where all guides stand on one line. */
  round?: PlaceRound;
  slack?: { towardsTipM: number; towardsButtM: number };
}
export interface MarkRow {
  /** Counted from 1 at the tip; the tip-top is not counted. */
  guide: number;
  name: string;
  /** As marked: at the tape's tick from the section's own tip end. */
  fromTipM: number;
  /** As computed, before rounding. */
  exactFromTipM: number;
  /** To the guide (or the tip) before it, between marks. */
  intervalM: number;
  fromOwnTipM: number;
  fromOwnButtM: number;
  round?: MarkRound;
  /** ± of the guide’s best place over blanks that fit the readings; undefined where it is given, or nothing was read. */
  plusMinusM?: number;
  slack?: { towardsTipM: number; towardsButtM: number };
}
export interface SectionMarks {
  id: string;
  name: string;
  lengthM: number;
  /** Stations of its ends. */
  fromTipM: number;
  toTipM: number;
  /** Where its guides stand round it, once chosen. */
  lineSide?: LineSide;
  /** The line side from its reference, round the surface at the section's two ends. */
  lineSideRoundM?: { tipEnd: number; buttEnd: number };
  rows: MarkRow[];
}
export interface MarksList {
  sections: SectionMarks[];
  tapeStep: TapeStep;
  /** A guide over a spigot's gap, which cannot be marked. */
  findings: Finding[];
}

/** Guides from the tip down, inside the blank. */
export function listMarks(
  blank: AssembledBlank,
  guides: readonly GuideToMark[],
  tapeStep: TapeStep,
  { diameters = [], keepOut = [] }: { diameters?: readonly DiameterRow[]; keepOut?: readonly Zone[] } = {},
): MarksList {
  const sections = blank.sections.map(
    ({ id, name, lengthM, ends, lineSide }): SectionMarks => ({
      ...{ id, name, lengthM, ...ends },
      ...(lineSide ? { lineSide, ...sideRound(lineSide, ends, diameters) } : {}),
      rows: [],
    }),
  );
  const findings: Finding[] = [];
  let before = 0;
  guides.forEach((guide, index) => {
    const mark = locateMark(blank, guide.fromTipM);
    if (mark.onSection === 'none') {
      findings.push(overGap(index, blank, mark.gapOfJoint));
      return;
    }
    const section = sections[mark.onSection];
    const zones = zonesOfRing(keepOut, guide.footM ?? 0);
    const fromOwnTipM = freeTick(mark.fromOwnTipM, section, zones, tapeStep);
    const fromTipM = section.fromTipM + fromOwnTipM;
    section.rows.push({
      guide: index + 1,
      name: guide.name,
      fromTipM,
      exactFromTipM: guide.fromTipM,
      intervalM: fromTipM - before,
      fromOwnTipM,
      fromOwnButtM: section.lengthM - fromOwnTipM,
      slack: guide.slack,
      ...(guide.round ? { round: markRound(guide.round) } : {}),
    });
    before = fromTipM;
  });
  return { sections, tapeStep, findings };
}

/** The nearest tick that keeps the foot off the ferrules, if one of the next is; a guide told to stand there stays. */
function freeTick(
  atM: number,
  { fromTipM, lengthM }: SectionMarks,
  zones: readonly Zone[],
  tapeStep: TapeStep,
): number {
  const nearest = roundToTape(atM, tapeStep);
  const away = Math.sign(atM - nearest || 1) * tickM(tapeStep);
  const ticks = [nearest, nearest + away, nearest - away].filter((tick) => tick >= 0 && tick <= lengthM);
  return ticks.find((tick) => !zoneAt(zones, fromTipM + tick)) ?? nearest;
}

function sideRound(
  { angleRad }: LineSide,
  { fromTipM, toTipM }: { fromTipM: number; toTipM: number },
  diameters: readonly DiameterRow[],
): Pick<SectionMarks, 'lineSideRoundM'> {
  const [tip, butt] = [fromTipM, toTipM].map((at) => diameterAt(diameters, at));
  if (tip === undefined || butt === undefined || angleRad === 0) return {};
  return { lineSideRoundM: { tipEnd: (angleRad * tip) / 2, buttEnd: (angleRad * butt) / 2 } };
}

/** The paper of a tape lies on a round blank without creases: an angle is its share of the way round. */
export function markRound(place: PlaceRound): MarkRound {
  const radiusM = place.outsideM / 2;
  return {
    ...place,
    fromTopLineM: place.fromTopRad * radiusM,
    fromUnderLineM: (Math.PI - place.fromTopRad) * radiusM,
  };
}

/** The same list with the ± of every guide's best place, by guide. */
export function withPlusMinus(list: MarksList, plusMinusM: readonly (number | undefined)[]): MarksList {
  const sections = list.sections.map((section) => ({
    ...section,
    rows: section.rows.map((row) => ({ ...row, plusMinusM: plusMinusM[row.guide - 1] })),
  }));
  return { ...list, sections };
}

/** The marks of all sections, from the tip down. */
export function marksInOrder(list: MarksList): MarkRow[] {
  return list.sections.flatMap(({ rows }) => rows).sort((a, b) => a.guide - b.guide);
}

export interface MarksKinds {
  'marks/over-spigot-gap': { guide: number; upper: string; lower: string };
}
const found = findingsOf<MarksKinds>();

function overGap(index: number, blank: AssembledBlank, joint: number): Finding {
  const { upper } = blank.joints[joint];
  const names = { upper: blank.sections[upper].name, lower: blank.sections[upper + 1].name };
  return found(`guides/${index}/station`, 'marks/over-spigot-gap', { guide: index + 1, ...names });
}
