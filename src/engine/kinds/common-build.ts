/** Guides, marks and handle to start from, so that a newcomer need not type them: what is common for a kind of rod. */
import { type Guide, guideNumbers, typicalGuide } from './guides.ts';
import type { HandlePlaces, RodInBrief } from './rod-kind.ts';
import { type RodKind, rodKindOf } from './rod-kinds.ts';

export interface GuideSet {
  tipTop: Guide;
  /** From the tip down, the stripping guide last. */
  guides: Guide[];
}

export function commonGuides(
  rod: RodInBrief & { rodKind: RodKind },
  count = commonGuideCount(rod.rodKind, rod.blankLengthM),
): GuideSet {
  const { guides } = rodKindOf(rod.rodKind);
  const [running, butt] = [guides.running(rod), guides.butt(rod)];
  const buttSizes = butt.sizes.slice(-Math.max(1, count - 1));
  const places = Math.max(0, count - buttSizes.length);
  return {
    tipTop: known('tip-top', guides.tipTopSize),
    guides: [
      ...Array.from({ length: places }, (_, place) =>
        known(running.kind, running.sizes[Math.floor((place * running.sizes.length) / places)]),
      ),
      ...buttSizes.map((size) => known(butt.kind, size)),
    ],
  };
}

export function commonGuideCount(rodKind: RodKind, blankLengthM: number): number {
  return rodKindOf(rodKind).guides.count(blankLengthM);
}

export interface CommonMarks {
  firstFromTipM: number;
  strippingFromTipM: number;
}

/** To the quarter inch. */
export function commonMarks(rodKind: RodKind, blankLengthM: number, handle: HandlePlaces): CommonMarks {
  const quarter = (lengthM: number) => (Math.round((4 * lengthM) / 0.0254 + 1e-9) / 4) * 0.0254;
  const { start } = rodKindOf(rodKind);
  return {
    firstFromTipM: quarter(start.firstFromTipM(blankLengthM)),
    strippingFromTipM: quarter(blankLengthM - start.strippingFromButtM(blankLengthM, handle)),
  };
}

export function commonHandle(rodKind: RodKind, blankLengthM: number): HandlePlaces {
  return rodKindOf(rodKind).handle.places(blankLengthM);
}

/** A size that a kind of rod names is one that its kind of guide knows. */
function known(kind: Guide['kind'], size: string): Guide {
  const guide = typicalGuide(kind, size);
  if (!guide) throw new Error(`no numbers for a ${kind} guide of size ${size}`);
  const ringed = guideNumbers(kind, size)?.outsideM !== undefined;
  return ringed && !/mm$/.test(size) ? { ...guide, size: `${size} mm` } : guide;
}
