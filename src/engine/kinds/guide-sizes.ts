/** How a kind of guide says its sizes, and the typical numbers of one. */

/** Typical of a size: middles of the trade's ranges (common practice, no source); measured ones replace them. */
export interface GuideNumbers {
  /** From the blank's surface to the middle of the ring; a tip-top's from its tube's axis. */
  ringHeightM: number;
  /** Length along the blank over all feet. */
  lengthM: number;
  massKg: number;
  /** Clear opening. */
  insideM: number;
  /** Of the ring; undefined for bent wire. */
  outsideM?: number;
}

/** Numbers of a size as it is written; undefined where the size says nothing. */
export type SizeScale = (size: string) => GuideNumbers | undefined;

const mm = 0.001;
const gram = 0.001;

/** Height, length, mass, clear opening, in mm and g, for each name. */
export function namedSizes(
  rows: Readonly<Record<string, readonly [number, number, number, number]>>,
): SizeScale {
  return (size) => {
    if (!Object.hasOwn(rows, size)) return undefined;
    const [height, length, grams, inside] = rows[size];
    return { ringHeightM: height * mm, lengthM: length * mm, massKg: grams * gram, insideM: inside * mm };
  };
}

export interface RingScale {
  /** Ring's outside diameter: smallest and largest that the scale speaks of. */
  fromMm: number;
  toMm: number;
  heightMm(ringMm: number): number;
  lengthMm(ringMm: number): number;
  grams(ringMm: number): number;
  /** Height, length and mass of sizes that have numbers of their own. */
  rows?: Readonly<Record<string, readonly [number, number, number]>>;
}

/** Sizes are ring diameters in mm: `6`, `5.5 mm`. A ring opens to two thirds of its size: 60 to 75 % in the trade. */
export function ringSizes({ fromMm, toMm, rows = {}, ...scale }: RingScale): SizeScale {
  return (size) => {
    const ringMm = ringMmOf(size);
    if (ringMm === undefined || ringMm < fromMm || ringMm > toMm) return undefined;
    const [height, length, grams] = rows[`${ringMm}`] ?? [
      scale.heightMm(ringMm),
      scale.lengthMm(ringMm),
      scale.grams(ringMm),
    ];
    return {
      ringHeightM: height * mm,
      lengthM: length * mm,
      massKg: grams * gram,
      insideM: 0.67 * ringMm * mm,
      outsideM: ringMm * mm,
    };
  };
}

export function ringMmOf(size: string): number | undefined {
  const found = /^(\d+(?:\.\d+)?)(?: ?mm)?$/.exec(size);
  return found ? Number(found[1]) : undefined;
}

/**
 * A ringed guide's mass grows with its ring to the power 1.9: within 7 % of the middles of the trade's ranges from 8
 * to 20 mm, and own estimate beyond.
 */
export function gramsOfRing(ringMm: number, gramsAt8mm: number): number {
  return gramsAt8mm * (ringMm / 8) ** 1.9;
}

/** Straight lines through (ring, value) in mm, the last one carried on. */
export function straightBetween(places: readonly (readonly [number, number])[]): (ringMm: number) => number {
  return (ringMm) => {
    const above = places.findIndex(([ring], i) => i > 0 && ring >= ringMm);
    const i = above < 0 ? places.length - 1 : above;
    const [[x0, y0], [x1, y1]] = [places[i - 1], places[i]];
    return y0 + ((ringMm - x0) / (x1 - x0)) * (y1 - y0);
  };
}
