/** What is asked about the line off the reel of one build. */
import type { AssembledBlank } from '../bench/assemble.ts';
import type { Handle } from '../bench/bench.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import type { GuideKind } from '../kinds/guide-kinds.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LineSource } from '../spool/fan.ts';
import type { FanLimits } from '../spool/first-ring.ts';
import type { Surface } from '../spool/surface.ts';
import type { Choices, LineChoices } from './choices.ts';

/** A ring that the builder has, or may order: what it is called follows from its kind and size. */
export interface RingOnHand {
  kind: GuideKind;
  size: string;
  /** From the blank's surface. */
  ringHeightM: number;
  insideM: number;
}
export interface GuideOnLine extends Omit<RingOnHand, 'insideM'> {
  fromTipM: number;
  insideM?: number;
  /** Where its ring stands round the rod, from the reel's side; left out: on it. */
  fromReelRad?: number;
}
export interface ReelLineQuestion {
  /** Tip to the front of the grip. */
  freeM: number;
  source: LineSource;
  tiltSigmaRad?: number;
  surface: Surface;
  /** From the tip; the last one is the first from the reel. */
  guides: readonly GuideOnLine[];
  limits: FanLimits;
  knotM?: number;
  onHand: readonly RingOnHand[];
  /** What the rod is bent by; empty ladder: not at all. */
  ladder: LadderRequest;
}
/** What still has to be measured before there is a fan; paths of the record. */
export type ReelLineGap = { needs: 'line/-/lipDiameter' | 'line/-/windWidth' };

export interface ReelLineParts {
  handle: Handle;
  choices: Choices;
  blank: AssembledBlank;
  diameters: readonly DiameterRow[];
  ladder: LadderRequest;
  fromTipM: readonly number[];
  onHand: readonly RingOnHand[];
}

/** Undefined for a rod whose line has no such thing, and where the reel stands in front of its guide. */
export function reelLineQuestion(parts: ReelLineParts): ReelLineQuestion | ReelLineGap | undefined {
  const { handle, choices, blank, diameters, fromTipM, ladder, onHand } = parts;
  if (!choices.line || diameters.length === 0) return undefined;
  const { line } = choices;
  const source = sourceOf(line, handle);
  if ('needs' in source) return source;
  const freeM = blank.lengthM - handle.gripFrontFromButtM;
  if (source.alongM + leastRunM > freeM - fromTipM[fromTipM.length - 1]) return undefined;
  return {
    freeM,
    source,
    tiltSigmaRad: line.reel.kind === 'fixed spool' ? line.reel.tiltSigmaRad : undefined,
    surface: surfaceOf(diameters, freeM, line.gripDiameterM),
    guides: choices.guides.map(({ kind, size, ringHeightM, insideM }, i) => {
      const fromReelRad = roundFromReel(ladder, i);
      return { kind, size, ringHeightM, insideM, fromTipM: fromTipM[i], fromReelRad };
    }),
    limits: line.limits,
    knotM: line.knotM,
    onHand,
    ladder,
  };
}

function roundFromReel({ guides, reel }: LadderRequest, guide: number): number | undefined {
  const around = guides.aroundRad?.[guide];
  return around === undefined ? undefined : around - (reel.aroundRad ?? 0);
}

function sourceOf({ reel }: LineChoices, handle: Handle): LineSource | ReelLineGap {
  const place = { alongM: handle.reelFromButtM - handle.gripFrontFromButtM, offsetM: handle.reelOffsetM };
  if (reel.kind === 'multiplier') {
    if (reel.windWidthM === undefined) return { needs: 'line/-/windWidth' };
    return { ...place, widthM: reel.windWidthM };
  }
  if (reel.lipDiameterM === undefined) return { needs: 'line/-/lipDiameter' };
  return { ...place, lipDiameterM: reel.lipDiameterM, tiltRad: reel.tiltRad };
}

/** The bare blank up to the grip, then the grip. */
function surfaceOf(diameters: readonly DiameterRow[], freeM: number, gripDiameterM: number): Surface {
  const ahead = diameters.filter(({ fromTipM }) => fromTipM < freeM);
  const frontM = diameterAt(diameters, freeM) ?? 0;
  const blank = [...ahead, { fromTipM: freeM, outsideM: frontM }];
  const rows = [...blank, { fromTipM: freeM, outsideM: Math.max(frontM, gripDiameterM) }];
  return rows.map(({ fromTipM, outsideM }) => ({ fromTipM, radiusM: outsideM / 2 }));
}

/** Nearer than a hand's breadth there is no fan to speak of. */
const leastRunM = 0.05;
