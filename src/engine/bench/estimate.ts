/**
 * A first guess of the blank from its diameters alone, before anything was hung on it; good to a factor of two,
 * enough to choose test weights and to see whether they reach the floor.
 *
 * Thin round tube: EI = E·π/64·(OD⁴ − ID⁴), mass per length ρ·π/4·(OD² − ID²), wall linear in OD.
 * Modulus, density and walls: typical laminates (invented blanks that reproduce the trade's loads), no source.
 */
import type { Material } from './bench.ts';
import type { DiameterRow } from './diameter-profile.ts';
import type { BlankTables } from './free-rod.ts';

interface Laminate {
  modulusPa: number;
  densityKgPerM3: number;
  /** Wall at an outside diameter of 1.7 mm and of 10 mm. */
  wallTipM: number;
  wallButtM: number;
}
const laminates: Record<Material, Laminate> = {
  carbon: { modulusPa: 105e9, densityKgPerM3: 1530, wallTipM: 0.0004, wallButtM: 0.00055 },
  glass: { modulusPa: 38e9, densityKgPerM3: 1900, wallTipM: 0.0009, wallButtM: 0.001 },
  unknown: { modulusPa: 105e9, densityKgPerM3: 1530, wallTipM: 0.0004, wallButtM: 0.00055 },
};

/** One row per diameter; at least one diameter is needed. */
export function estimateFromDiameters(profile: readonly DiameterRow[], material: Material): BlankTables {
  const rows = profile.map(({ fromTipM, outsideM }) => ({
    fromTipM,
    ...tube(outsideM, laminates[material]),
  }));
  return {
    stiffness: rows.map(({ fromTipM, EINm2 }) => ({ fromTipM, EINm2 })),
    massPerLength: rows.map(({ fromTipM, kgPerM }) => ({ fromTipM, kgPerM })),
  };
}

function tube(outsideM: number, laminate: Laminate): { EINm2: number; kgPerM: number } {
  const grown = (outsideM - 0.0017) / (0.01 - 0.0017);
  const wallM = laminate.wallTipM + grown * (laminate.wallButtM - laminate.wallTipM);
  const insideM = outsideM - 2 * Math.min(wallM, 0.5 * outsideM);
  return {
    EINm2: (laminate.modulusPa * Math.PI * (outsideM ** 4 - insideM ** 4)) / 64,
    kgPerM: (laminate.densityKgPerM3 * Math.PI * (outsideM ** 2 - insideM ** 2)) / 4,
  };
}
