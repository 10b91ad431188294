/**
 * Guides, handle and marks to start from, so that a newcomer need not type them.
 * Every number here is common practice, no source: ranges of the trade, their middles taken. Guides differ
 * between makers; measured ones replace these.
 */
export type GuideKind = 'tip-top' | 'snake' | 'single-foot' | 'ringed' | 'stripping';
export interface Guide {
  kind: GuideKind;
  size: string;
  /** From the blank's surface to the middle of the ring; the tip-top's from its tube's axis. */
  ringHeightM: number;
  /** Length along the blank over both feet. */
  lengthM: number;
  massKg: number;
}
export type RodKind = 'fly' | 'spinning' | 'casting';

export interface GuideSet {
  tipTop: Guide;
  /** From the tip down, the stripping guide last. */
  guides: Guide[];
}
export interface RodInBrief {
  rodKind: RodKind;
  /** As the builder writes it: `5`, `#5-6`, `WF8F`. */
  lineWeight: string;
  blankLengthM: number;
}

/** Snakes (or ringed running guides) growing from the tip, one or two stripping guides. */
export function commonGuides(rod: RodInBrief, count = commonGuideCount(rod.blankLengthM)): GuideSet {
  const choice = rod.rodKind === 'fly' ? flyChoice(lineWeightNumber(rod.lineWeight)) : castChoice;
  const strippers = choice.strippers.slice(-Math.max(1, count - 1));
  const running = Math.max(0, count - strippers.length);
  const table = rod.rodKind === 'fly' ? snakes : ringed;
  return {
    tipTop: tipTops[rod.rodKind],
    guides: [
      ...Array.from({ length: running }, (_, index) => {
        const group = Math.floor((index * choice.running.length) / running);
        return table[choice.running[group]];
      }),
      ...strippers.map((size) => strippingGuides[size]),
    ],
  };
}

/** One guide a foot and one more; a half foot rounds up. */
export function commonGuideCount(blankLengthM: number): number {
  return Math.round(blankLengthM / 0.3048 + 1e-6) + 1;
}

export interface CommonMarks {
  firstFromTipM: number;
  strippingFromTipM: number;
}

/**
 * First guide 3 to 5 in from the tip, growing with the rod; stripping guide 30 in from the butt at 9 ft, 28 in
 * at 7 ft 6 in, and on two-handed rods 20 in in front of the grip. To the quarter inch.
 */
export function commonMarks(blankLengthM: number, gripFrontFromButtM: number): CommonMarks {
  const inches = blankLengthM / 0.0254;
  const quarter = (value: number) => (Math.round(value * 4) / 4) * 0.0254;
  const first = Math.min(5.5, Math.max(3, 4.5 + (inches - 108) * 0.055));
  const oneHanded = Math.min(32, Math.max(26, 30 + (inches - 108) / 9));
  const fromButt = gripFrontFromButtM > 0.4 ? gripFrontFromButtM / 0.0254 + 20 : oneHanded;
  return { firstFromTipM: quarter(first), strippingFromTipM: quarter(inches - fromButt) };
}

/** Grip, seat and reel of a one-handed rod, or of a two-handed one from 10 ft 6 in. */
export function commonHandle(blankLengthM: number) {
  return blankLengthM < 3.2
    ? { gripFrontFromButtM: 0.26, reelFromButtM: 0.06, reelOffsetM: 0.055 }
    : { gripFrontFromButtM: 0.56, reelFromButtM: 0.17, reelOffsetM: 0.065 };
}

/** The number in `#5`, `WF8F`, `5-6` (the lower); undefined where there is none from 0 to 15. */
export function lineWeightNumber(text: string): number | undefined {
  const found = /\d+/.exec(text);
  const number = found ? Number(found[0]) : Number.NaN;
  return number <= 15 ? number : undefined;
}

const mm = 0.001;
const gram = 0.001;
const guide = (kind: GuideKind, size: string, heightMm: number, lengthMm: number, grams: number): Guide => ({
  kind,
  size,
  ringHeightM: heightMm * mm,
  lengthM: lengthMm * mm,
  massKg: grams * gram,
});

/** Ring height: height over all less the wire and half the clear opening. */
const snakes: Record<string, Guide> = {
  '2/0': guide('snake', '2/0', 1.8, 19, 0.065),
  '1/0': guide('snake', '1/0', 2.0, 20.5, 0.08),
  '1': guide('snake', '1', 2.2, 22.5, 0.095),
  '2': guide('snake', '2', 2.4, 24.5, 0.115),
  '3': guide('snake', '3', 2.8, 27, 0.15),
  '4': guide('snake', '4', 3.3, 29.5, 0.205),
  '5': guide('snake', '5', 3.7, 32.5, 0.265),
  '6': guide('snake', '6', 4.2, 36, 0.34),
};
const ringed: Record<string, Guide> = {
  '6': guide('ringed', '6 mm', 6.5, 14, 0.25),
  '8': guide('ringed', '8 mm', 9, 22, 0.5),
};
const strippingGuides: Record<string, Guide> = {
  '8': guide('stripping', '8 mm', 8, 30, 0.65),
  '10': guide('stripping', '10 mm', 9.5, 33, 0.95),
  '12': guide('stripping', '12 mm', 11, 36, 1.45),
  '16': guide('stripping', '16 mm', 12.5, 40, 2.3),
  '20': guide('stripping', '20 mm', 14, 44, 3.65),
};
const tipTops: Record<RodKind, Guide> = {
  fly: guide('tip-top', 'fly', 2.5, 12, 0.25),
  spinning: guide('tip-top', '6 mm', 4, 14, 0.4),
  casting: guide('tip-top', '6 mm', 4, 14, 0.4),
};

/**
 * Typical numbers of a kind and size, middles of the trade's ranges; undefined for a size without common numbers.
 * A single-foot wire guide is taken as the snake of its number with one foot less, own estimate.
 */
export function typicalGuide(kind: GuideKind, size: string): Guide | undefined {
  const name = size.trim();
  if (kind === 'snake') return snakes[name];
  if (kind === 'single-foot') {
    const like = snakes[name];
    return like && { ...like, kind, lengthM: 0.7 * like.lengthM, massKg: 0.9 * like.massKg };
  }
  const ring = /^(\d+(?:\.\d+)?)(?: ?mm)?$/.exec(name)?.[1] ?? '';
  if (kind === 'stripping') return strippingGuides[ring];
  if (kind === 'ringed') {
    const like = ringed[ring] ?? strippingGuides[ring];
    return like && { ...like, kind };
  }
  return undefined;
}

interface SizeChoice {
  /** Running sizes from the tip down, shared out evenly. */
  running: string[];
  strippers: string[];
}
const castChoice: SizeChoice = { running: ['6', '6', '8'], strippers: ['12', '20'] };

function flyChoice(lineWeight = 5): SizeChoice {
  if (lineWeight <= 4) return { running: ['2/0', '1/0', '1'], strippers: ['10'] };
  if (lineWeight <= 6) return { running: ['1/0', '1', '2'], strippers: ['12'] };
  if (lineWeight <= 8) return { running: ['1', '2', '3'], strippers: ['12', '16'] };
  return { running: ['3', '4', '5', '6'], strippers: ['16', '20'] };
}
