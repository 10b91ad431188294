/** What does not go together between reel, line and first guide, at the fields of the record. */
import type { Handle } from '../bench/bench.ts';
import { type BenchFinding, doubtsOf } from '../bench/bench-finding.ts';
import type { SpoolKinds } from '../spool/spool-kinds.ts';
import type { ChosenGuide, LineChoices } from './choices.ts';

const doubtAt = doubtsOf<SpoolKinds>();

export interface ReelLineToCheck {
  handle: Handle;
  line: LineChoices;
  guides: readonly ChosenGuide[];
  /** Where the first guide from the reel stands. */
  firstFromTipM: number;
  blankLengthM: number;
}

export function checkReelLine(parts: ReelLineToCheck): BenchFinding[] {
  const { handle, line, guides, firstFromTipM, blankLengthM } = parts;
  const findings: BenchFinding[] = [];
  const guideFromButtM = blankLengthM - firstFromTipM;
  if (foremostM(handle.reelFromButtM, line) >= guideFromButtM) {
    const values = { reelFromButtM: handle.reelFromButtM, guideFromButtM };
    findings.push(doubtAt('handle/-/reelFromButt', 'spool/reel-past-guide', values));
  }
  const { reel } = line;
  if (reel.kind === 'fixed spool' && reel.tiltRad <= 0 && reel.tiltIs !== 'typical') {
    const path = reel.tiltIs === 'typed' ? 'line/-/tilt' : 'line/-/farHeight';
    findings.push(doubtAt(path, 'spool/axis-away', { tiltRad: reel.tiltRad }));
  }
  return [...findings, ...knotFindings(guides, line.knotM)];
}

/** The whole lip, tilted as it is. */
function foremostM(reelFromButtM: number, { reel }: LineChoices): number {
  if (reel.kind === 'multiplier') return reelFromButtM;
  return reelFromButtM + ((reel.lipDiameterM ?? 0) / 2) * Math.abs(Math.sin(reel.tiltRad));
}

/** Of the first ring alone, at its size where the builder typed one: the others are looked at with the set (Guides). */
function knotFindings(guides: readonly ChosenGuide[], knotM: number | undefined): BenchFinding[] {
  const first = guides[guides.length - 1];
  const insideM = first?.insideM;
  if (knotM === undefined || insideM === undefined || insideM > knotM) return [];
  return [doubtAt('layout/-/knot', 'spool/ring-smaller-than-knot', { insideM, knotM })];
}
