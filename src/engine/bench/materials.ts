/**
 * What a blank is made of, each kind declared once: a typical laminate to guess a bend by before anything was hung
 * (invented blanks that reproduce the trade's loads, no source), and from which surface strain on to warn and to stop.
 *
 * The levels are a judgement from published laminates, where compression along the fibres governs, its strength over
 * its modulus: standard carbon 0.56 % (measured mean, Acta Mechanica et Automatica 2025, doi 10.2478/ama-2025-0022)
 * to 0.89 % (suppliers' tables), stiffest carbon 0.3 % (Zweben 1989), E-glass 1.5 %; moso bamboo about 0.5 % (Dixon &
 * Gibson 2014, J. R. Soc. Interface 11:20140321, from memory). Never a promise that a blank will hold.
 */
export interface MaterialKind {
  laminate: Laminate;
  strain: { cautionPercent: number; stopPercent: number };
}
export interface Laminate {
  modulusPa: number;
  densityKgPerM3: number;
  /** Wall at an outside diameter of 1.7 mm and of 10 mm. */
  wallTipM: number;
  wallButtM: number;
}

const carbonWalls = { densityKgPerM3: 1530, wallTipM: 0.0004, wallButtM: 0.00055 };

export const materials = {
  /** Of a kind that nobody told: below the lowest published mean of standard carbon. */
  carbon: {
    laminate: { modulusPa: 105e9, ...carbonWalls },
    strain: { cautionPercent: 0.35, stopPercent: 0.5 },
  },
  'carbon-standard': {
    laminate: { modulusPa: 105e9, ...carbonWalls },
    strain: { cautionPercent: 0.4, stopPercent: 0.55 },
  },
  /** Nothing published was found in compression: between its neighbours. */
  'carbon-intermediate': {
    laminate: { modulusPa: 125e9, ...carbonWalls },
    strain: { cautionPercent: 0.3, stopPercent: 0.42 },
  },
  'carbon-high': {
    laminate: { modulusPa: 150e9, ...carbonWalls },
    strain: { cautionPercent: 0.2, stopPercent: 0.3 },
  },
  glass: {
    laminate: { modulusPa: 38e9, densityKgPerM3: 1900, wallTipM: 0.0009, wallButtM: 0.001 },
    strain: { cautionPercent: 0.6, stopPercent: 1 },
  },
  /** Solid: half of the diameter is wall. Modulus and density of the outer culm, from memory. */
  bamboo: {
    laminate: { modulusPa: 23e9, densityKgPerM3: 1050, wallTipM: 0.00085, wallButtM: 0.005 },
    strain: { cautionPercent: 0.3, stopPercent: 0.42 },
  },
  /** Careful: as carbon of a kind that nobody told. */
  unknown: {
    laminate: { modulusPa: 105e9, ...carbonWalls },
    strain: { cautionPercent: 0.35, stopPercent: 0.5 },
  },
} as const satisfies Record<string, MaterialKind>;

export type Material = keyof typeof materials;

/** Unknown where the word is none of them, or none. */
export function materialOf(id: string | undefined): Material {
  return id !== undefined && Object.hasOwn(materials, id) ? (id as Material) : 'unknown';
}
