/** What is odd about a set of guides on this blank. Rules are common practice, no source; the builder decides. */
import type { AssembledBlank } from '../bench/assemble.ts';
import { type BenchFinding, doubtsOf } from '../bench/bench-finding.ts';
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

/** What is odd about a guide in its place. */
export interface GuideKinds {
  'guides/size-order': { guide: number; size: string; nextSize: string };
  'guides/knot-sticks': { guide: number; knotM: number; openingM: number; measured: boolean };
  'guides/foot-wide': { guide: number; footM: number; blankM: number };
  'guides/foot-on-ferrule': { guide: number };
}
const doubtAt = doubtsOf<GuideKinds>();

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
  const values = { guide: index + 1, size: guide.size, nextSize: next?.size ?? '' };
  return [doubtAt(`guides/${guide.id}/size`, 'guides/size-order', values)];
}

function knotFindings(guide: SetGuide, knotM: number | undefined, index: number): BenchFinding[] {
  const opening = openingOf(guide);
  if (knotM === undefined || opening === undefined || opening > knotM) return [];
  const measured = guide.openingM !== undefined;
  const values = { guide: index + 1, knotM, openingM: opening, measured };
  return [doubtAt(`guides/${guide.id}/${measured ? 'opening' : 'size'}`, 'guides/knot-sticks', values)];
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
    const values = { guide: index + 1, footM: footWidthM, blankM: outsideM };
    findings.push(doubtAt(`guides/${id}/footWidth`, 'guides/foot-wide', values));
  }
  const [fromM, toM] = [stationM - lengthM / 2, stationM + lengthM / 2];
  const onFerrule = blank.joints.some(({ seat }) => fromM < seat.toTipM && toM > seat.fromTipM);
  if (onFerrule) {
    findings.push(doubtAt(`guides/${id}/station`, 'guides/foot-on-ferrule', { guide: index + 1 }));
  }
  return findings;
}
