/**
 * A replaced section judged by how this blank bends: the guides as they are carried over (repair/replaced-section.ts),
 * and those on the new section placed anew between the ones that stay. Until the new section is read it is taken for
 * the old one drawn out to its length; only guides that are wrapped anew in any case are moved.
 */
import type { Zone } from '../bench/assemble.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest, LadderRod } from '../layout/ladder-request.ts';
import { layout } from '../layout/layout.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { WorstPlace } from '../layout/worst.ts';
import type { SectionRepair } from '../repair/replaced-section.ts';

export interface SectionRepairQuestion {
  /** The rod as it was, with its guides, loads and limits. */
  request: LadderRequest & Pick<LayoutRequest, 'keepOut' | 'footM' | 'intervals'>;
  repair: SectionRepair;
}
export interface JudgedMarks {
  fromTipM: number[];
  worst: WorstPlace;
}
export interface JudgedSectionRepair {
  before: WorstPlace;
  /** The guides as they are carried over; undefined where one has no place on the new section. */
  carried?: JudgedMarks;
  /** Those on the new section placed anew; undefined where nothing fits between the ones that stay. */
  anew?: JudgedMarks;
  proposed: 'carried' | 'anew';
}

/** Marks on the new section are moved for a gain of this share or more: our choice. */
export const worthMoving = 0.02;

/** Undefined where no guide is wrapped anew, or the rod finds no bend. */
export function judgeSectionRepair({
  request,
  repair,
}: SectionRepairQuestion): JudgedSectionRepair | undefined {
  const { marks, longerByM } = repair;
  // Of the butt section what the grip covers stays as long as it was.
  const old = { ...repair.old, toTipM: Math.min(repair.old.toTipM, request.rod.lengthM) };
  if (!marks.some(({ rewrapped }) => rewrapped)) return undefined;
  const grown = {
    ...request,
    rod: grownRod(request.rod, old, longerByM),
    keepOut: request.keepOut?.map((zone) => movedZone(zone, old, longerByM)),
  };
  const before = readWorst(
    request,
    marks.map(({ wasFromTipM }) => wasFromTipM),
  );
  const places = marks.flatMap(({ fromTipM }) => fromTipM ?? []);
  const carried = places.length === marks.length ? judged(grown, places) : undefined;
  const anew = placedAnew(grown, marks);
  if (!before || !(carried ?? anew)) return undefined;
  const better = anew && (!carried || anew.worst.ratio < (1 - worthMoving) * carried.worst.ratio);
  return { before, carried, anew, proposed: better ? 'anew' : 'carried' };
}

/** The guides that stay are held; first and last stay where they were carried to. */
function placedAnew(
  grown: SectionRepairQuestion['request'],
  marks: SectionRepair['marks'],
): JudgedMarks | undefined {
  const [first, last] = [marks[0].fromTipM, marks[marks.length - 1].fromTipM];
  if (first === undefined || last === undefined) return undefined;
  const pinned = marks.flatMap(({ rewrapped, fromTipM }, index) =>
    !rewrapped && fromTipM !== undefined && index > 0 && index < marks.length - 1
      ? [{ index, fromTipM }]
      : [],
  );
  const asked = { ...grown, firstFromTipM: first, strippingFromTipM: last, pinned };
  for (const intervals of [grown.intervals ?? 'growing', 'free'] as const) {
    const found = layout({ ...asked, intervals });
    if (found.status !== 'refused') return judged(grown, found.fromTipM);
  }
  return undefined;
}

function judged(request: LadderRequest, fromTipM: number[]): JudgedMarks | undefined {
  const worst = readWorst(request, fromTipM);
  return worst && { fromTipM, worst };
}

function readWorst(request: LadderRequest, fromTipM: number[]): WorstPlace | undefined {
  const reading = readLadder(makeLadder(request), fromTipM);
  return reading.status === 'not-converged' ? undefined : reading.worstAt;
}

/** What stood on the old section stands at its share of the new one; above as it was, below moved on. */
function grownRod(rod: LadderRod, old: Zone, longerByM: number): LadderRod {
  const moved = <T extends { fromTipM: number }>(rows: readonly T[]): T[] =>
    rows.map((row) => ({ ...row, fromTipM: grownPlace(row.fromTipM, old, longerByM) }));
  const { stiffness, massPerLength, restCurvature, torsion } = rod;
  return {
    ...rod,
    lengthM: rod.lengthM + longerByM,
    stiffness: moved(stiffness),
    ...(massPerLength ? { massPerLength: moved(massPerLength) } : {}),
    ...(restCurvature ? { restCurvature: moved(restCurvature) } : {}),
    ...(torsion ? { torsion: moved(torsion) } : {}),
  };
}

function grownPlace(at: number, { fromTipM, toTipM }: Zone, longerByM: number): number {
  const share = (at - fromTipM) / (toTipM - fromTipM);
  return at + longerByM * Math.max(0, Math.min(1, share));
}

/** What is kept free is a joint at one of the section's ends: it stays with that end, as long as it is. */
function movedZone<T extends Zone>(zone: T, old: Zone, longerByM: number): T {
  const below = zone.fromTipM + zone.toTipM > old.fromTipM + old.toTipM;
  const by = below ? longerByM : 0;
  return { ...zone, fromTipM: zone.fromTipM + by, toTipM: zone.toTipM + by };
}
