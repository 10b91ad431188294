/**
 * Balance point and mass of the parts: x = Σ m x / Σ m, distances from the butt end of the blank.
 *
 * A section whose balance was not measured is taken as a tapered tube of one thin wall, mass per length in
 * proportion to the diameter: centre at L/3 × (D + 2 d) / (D + d) from its thick end (centroid of a trapezium,
 * any textbook of statics).
 */
export interface PartMass {
  name: string;
  massKg: number;
  /** Of its own centre, from the butt end; may lie behind it (negative). */
  fromButtM: number;
}
export interface Balance {
  massKg: number;
  /** Undefined where nothing weighs anything. */
  fromButtM: number | undefined;
}

export function balanceOf(parts: readonly PartMass[]): Balance {
  const massKg = parts.reduce((sum, part) => sum + part.massKg, 0);
  const moment = parts.reduce((sum, part) => sum + part.massKg * part.fromButtM, 0);
  return { massKg, fromButtM: massKg > 0 ? moment / massKg : undefined };
}

/** Distance of a thin tapered tube's centre from its thick end. */
export function taperedTubeCentreM(lengthM: number, thickM: number, thinM: number): number {
  return (lengthM / 3) * ((thickM + 2 * thinM) / (thickM + thinM));
}
