import { type Rational, rational } from './rational.ts';

/**
 * Units a bench writes, as exact multiples of the SI unit.
 * Source: the international yard and pound agreement of 1959 (1 in = 25.4 mm, 1 lb = 0.45359237 kg, both
 * exact; 1 oz = 1/16 lb; 1 grain = 1/7000 lb = 64.79891 mg); the US gallon of 231 in³, 128 fl oz (NIST SP 811,
 * appendix B.8); °C = (°F − 32) × 5/9, exact. Temperatures are °C, which the record keeps; all else is SI.
 */
export type Dimension =
  | 'length'
  | 'mass'
  | 'angle'
  | 'duration'
  | 'temperature'
  /** A difference of temperatures. */
  | 'warmer'
  | 'volume'
  | 'density';
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
  /** Added to the SI value: what a thermometer shows at 0 of its own. */
  zero?: Rational;
}

/** What a bare number means to one shop. */
export interface BareUnits {
  system: UnitSystem;
  /** Grams where left out. */
  weighsIn?: 'g' | 'oz';
  /** Fahrenheit in an inch shop where left out. */
  temperatureIn?: 'C' | 'F';
}

const degree = Math.PI / 180;
const celsius = ['°c', 'c', 'celsius'];
const fahrenheit = ['°f', 'f', 'fahrenheit'];
/** The US gallon of 231 in³, in 10⁻¹² m³. */
const gallon = 231n * 254n ** 3n;

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
    { symbol: 'wk', spellings: ['wk', 'week'], factor: rational(604_800n) },
  ],
  temperature: [
    { symbol: '°C', spellings: celsius, factor: rational(1n) },
    { symbol: '°F', spellings: fahrenheit, factor: rational(5n, 9n), zero: rational(-160n, 9n) },
  ],
  warmer: [
    { symbol: '°C', spellings: [...celsius, 'k', 'kelvin'], factor: rational(1n) },
    { symbol: '°F', spellings: fahrenheit, factor: rational(5n, 9n) },
  ],
  volume: [
    {
      symbol: 'ml',
      spellings: ['ml', 'millilitre', 'milliliter', 'cc', 'cm3'],
      factor: rational(1n, 1_000_000n),
    },
    { symbol: 'cl', spellings: ['cl', 'centilitre', 'centiliter'], factor: rational(1n, 100_000n) },
    { symbol: 'l', spellings: ['l', 'litre', 'liter'], factor: rational(1n, 1000n) },
    { symbol: 'fl oz', spellings: ['fl oz'], factor: rational(gallon, 128n * 10n ** 12n) },
  ],
  density: [
    { symbol: 'g/ml', spellings: ['g/ml', 'g/cc', 'g/cm3', 'kg/l'], factor: rational(1000n) },
    { symbol: 'kg/m3', spellings: ['kg/m3'], factor: rational(1n) },
    { symbol: 'lb/gal', spellings: ['lb/gal'], factor: rational(45_359_237n * 10n ** 4n, gallon) },
  ],
};

/**
 * The unit of a bare number. Masses are grams in an inch shop too unless it says otherwise: bench weights and scales of
 * the 0.1 g kind are marked in grams.
 */
export function bareUnit(dimension: Dimension, { system, weighsIn, temperatureIn }: BareUnits): string {
  const degree = `°${temperatureIn ?? (system === 'inch' ? 'F' : 'C')}`;
  return {
    length: system === 'inch' ? 'in' : 'mm',
    mass: weighsIn ?? 'g',
    angle: '°',
    duration: 'min',
    temperature: degree,
    warmer: degree,
    volume: 'ml',
    density: 'g/ml',
  }[dimension];
}

/** Finds a unit by any spelling, singular or plural, in any case. */
export function findUnit(dimension: Dimension, word: string): Unit | undefined {
  const lower = word
    .toLowerCase()
    .replace(/\.$/, '')
    .replace(/^°\s+/, '°')
    .replace(/^fl\.?\s*oz/, 'fl oz');
  const matches = (spelling: string) =>
    spelling === lower || (spelling.length > 1 && `${spelling}s` === lower);
  return unitTable[dimension].find((unit) => unit.spellings.some(matches));
}
