/** What is odd about a set of guides on this blank. Rules are common practice, no source; the builder decides. */
import type { AssembledBlank } from '../bench/assemble.ts';
import { type BenchFinding, bothLengths, doubt } from '../bench/bench-finding.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { GuideKind } from '../kinds/guide-kinds.ts';
import { guideNumbers } from '../kinds/guides.ts';

export interface SetGuide {
  id: string;
  kind: GuideKind;
  size: string;
  stationM?: number;
  /** Over all feet. */
  lengthM: number;
  /** Clear opening, measured; left out: typical of the size where there is one. */
  openingM?: number;
  footWidthM?: number;
}

/** Guides from the tip down. `knotM`: the thickest knot that must pass. */
export function checkGuideSet(
  guides: readonly SetGuide[],
  blank: AssembledBlank,
  { profile, knotM }: { profile: readonly DiameterRow[]; knotM?: number },
): BenchFinding[] {
  return guides.flatMap((guide, index) => [
    ...orderFindings(guide, guides[index + 1], index),
    ...knotFindings(guide, knotM, index),
    ...placeFindings(guide, index, blank, profile),
  ]);
}

/** Measured, or typical of its size; undefined for a size that its kind does not know. */
function openingOf({ openingM, kind, size }: SetGuide): number | undefined {
  return openingM ?? guideNumbers(kind, size)?.insideM;
}

function orderFindings(guide: SetGuide, next: SetGuide | undefined, index: number): BenchFinding[] {
  const [here, below] = [openingOf(guide), next && openingOf(next)];
  if (here === undefined || below === undefined || here <= below + 1e-4) return [];
  const message = `Guide ${index + 1} (${guide.size}) opens wider than guide ${index + 2} (${next?.size}) behind it: sizes should fall towards the tip. Swap the two.`;
  return [doubt(`guides/${guide.id}/size`, message)];
}

function knotFindings(guide: SetGuide, knotM: number | undefined, index: number): BenchFinding[] {
  const opening = openingOf(guide);
  if (knotM === undefined || opening === undefined || opening > knotM) return [];
  const measured = guide.openingM === undefined ? 'typically' : 'measured';
  const message = `A knot of ${bothLengths(knotM)} does not pass guide ${index + 1}, which opens ${bothLengths(opening)} (${measured}): take a larger size or a slimmer knot.`;
  return [doubt(`guides/${guide.id}/${guide.openingM === undefined ? 'size' : 'opening'}`, message)];
}

function placeFindings(
  { id, stationM, lengthM, footWidthM }: SetGuide,
  index: number,
  blank: AssembledBlank,
  profile: readonly DiameterRow[],
): BenchFinding[] {
  if (stationM === undefined) return [];
  const findings: BenchFinding[] = [];
  const outsideM = diameterAt(profile, stationM);
  if (footWidthM !== undefined && outsideM !== undefined && footWidthM > outsideM) {
    const message = `The foot of guide ${index + 1}, ${bothLengths(footWidthM)} wide, is wider than the blank there (${bothLengths(outsideM)}): narrow its shoulders, or take a smaller guide.`;
    findings.push(doubt(`guides/${id}/footWidth`, message));
  }
  const [fromM, toM] = [stationM - lengthM / 2, stationM + lengthM / 2];
  const onFerrule = blank.joints.some(({ seat }) => fromM < seat.toTipM && toM > seat.fromTipM);
  if (onFerrule) {
    const message = `A foot of guide ${index + 1} would lie on a ferrule: move its mark off the joint, under Layout.`;
    findings.push(doubt(`guides/${id}/station`, message));
  }
  return findings;
}
