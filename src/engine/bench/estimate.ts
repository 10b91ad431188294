/**
 * A first guess of the blank from its diameters alone, before anything was hung on it; good to a factor of two,
 * enough to choose test weights and to see whether they reach the floor.
 *
 * Thin round tube: EI = E·π/64·(OD⁴ − ID⁴), mass per length ρ·π/4·(OD² − ID²), wall linear in OD.
 * Modulus, density and walls: materials.ts.
 */
import type { DiameterRow } from './diameter-profile.ts';
import type { BlankTables } from './free-rod.ts';
import { type Laminate, type Material, materials } from './materials.ts';

/** One row per diameter; at least one diameter is needed. */
export function estimateFromDiameters(profile: readonly DiameterRow[], material: Material): BlankTables {
  const rows = profile.map(({ fromTipM, outsideM }) => ({
    fromTipM,
    ...tube(outsideM, materials[material].laminate),
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
