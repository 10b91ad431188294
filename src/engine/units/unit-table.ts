import { type Rational, rational } from './rational.ts';

/**
 * Units a bench writes, as exact multiples of the SI unit.
 * Source: the international yard and pound agreement of 1959 (1 in = 25.4 mm, 1 lb = 0.45359237 kg, both
 * exact; 1 oz = 1/16 lb; 1 grain = 1/7000 lb = 64.79891 mg).
 */
export type Dimension = 'length' | 'mass' | 'angle' | 'duration';
/** The shop's system. It decides what a bare number means and how a value is shown, never a stored value. */
export type UnitSystem = 'inch' | 'mm';

export interface Unit {
  /** How the unit is written back to the reader. */
  symbol: string;
  spellings: readonly string[];
  /** This unit in SI, or in the unit that `scale` turns into SI. */
  factor: Rational;
  /** For degrees, which no fraction turns into radians; 1 where left out. */
  scale?: number;
}

const degree = Math.PI / 180;

export const unitTable: Record<Dimension, readonly Unit[]> = {
  length: [
    { symbol: 'mm', spellings: ['mm', 'millimetre', 'millimeter'], factor: rational(1n, 1000n) },
    { symbol: 'cm', spellings: ['cm', 'centimetre', 'centimeter'], factor: rational(1n, 100n) },
    { symbol: 'm', spellings: ['m', 'metre', 'meter'], factor: rational(1n) },
    { symbol: 'in', spellings: ['in', '"', 'inch', 'inches', 'ins'], factor: rational(254n, 10_000n) },
    { symbol: 'ft', spellings: ['ft', "'", 'foot', 'feet'], factor: rational(3048n, 10_000n) },
  ],
  mass: [
    { symbol: 'g', spellings: ['g', 'gram', 'gm', 'gramme'], factor: rational(1n, 1000n) },
    { symbol: 'kg', spellings: ['kg', 'kilo', 'kilogram', 'kilogramme'], factor: rational(1n) },
    { symbol: 'mg', spellings: ['mg', 'milligram'], factor: rational(1n, 1_000_000n) },
    {
      symbol: 'grains',
      spellings: ['gr', 'grain', 'gn'],
      factor: rational(6_479_891n, 100_000_000_000n),
    },
    { symbol: 'oz', spellings: ['oz', 'ounce'], factor: rational(45_359_237n, 1_600_000_000n) },
    { symbol: 'lb', spellings: ['lb', 'pound'], factor: rational(45_359_237n, 100_000_000n) },
  ],
  angle: [
    { symbol: '°', spellings: ['°', 'deg', 'degree'], factor: rational(1n), scale: degree },
    { symbol: "'", spellings: ["'", 'arcmin'], factor: rational(1n, 60n), scale: degree },
    { symbol: 'rad', spellings: ['rad', 'radian'], factor: rational(1n) },
  ],
  duration: [
    { symbol: 's', spellings: ['s', 'sec', 'second'], factor: rational(1n) },
    { symbol: 'min', spellings: ['min', 'minute'], factor: rational(60n) },
    { symbol: 'h', spellings: ['h', 'hr', 'hour'], factor: rational(3600n) },
    { symbol: 'd', spellings: ['d', 'day'], factor: rational(86_400n) },
  ],
};

/**
 * The unit of a bare number. Masses are grams in an inch shop too: bench weights and scales of the 0.1 g kind
 * are marked in grams, and an ounce is named where it is meant.
 */
export function bareUnit(dimension: Dimension, system: UnitSystem): string {
  if (dimension === 'length') return system === 'inch' ? 'in' : 'mm';
  return { mass: 'g', angle: '°', duration: 'min' }[dimension];
}

/** Finds a unit by any spelling, singular or plural, in any case. */
export function findUnit(dimension: Dimension, word: string): Unit | undefined {
  const lower = word.toLowerCase().replace(/\.$/, '');
  const matches = (spelling: string) =>
    spelling === lower || (spelling.length > 1 && `${spelling}s` === lower);
  return unitTable[dimension].find((unit) => unit.spellings.some(matches));
}
