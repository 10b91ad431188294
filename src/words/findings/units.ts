import type { QuantityKinds, Unread } from '../../engine/units/quantity-kinds.ts';
import type { Sentences } from './sentences.ts';

export const quantitySentences: Sentences<QuantityKinds> = {
  'units/not-read': ({ typed, dimension, why, part = '', other = '' }) => {
    const reason = reasons[why](part, other, dimension);
    return `"${typed}" cannot be read as ${kinds[dimension]}: ${reason}. Write ${examples[dimension]}.`;
  },
};

const examples = {
  length: `4 1/2 in, 4' 7 1/2", 3/64 in, 114 mm or 11.4 cm`,
  mass: '72 g, 0.1 kg, 2.5 oz or 1/4 oz',
  angle: '12°, 45 deg or 0.2 rad',
  duration: '6 h, 45 min or 1 h 30 min',
  temperature: '72 F or 22 C',
  warmer: '18 F or 10 C',
  volume: '12 ml or 1/2 fl oz',
  density: '1.1 g/ml or 9.2 lb/gal',
};
const kinds = {
  length: 'a length',
  mass: 'a mass',
  angle: 'an angle',
  duration: 'a duration',
  temperature: 'a temperature',
  warmer: 'a difference of temperatures',
  volume: 'a volume',
  density: 'a density',
};

const reasons: Record<Unread['why'], (part: string, other: string, dimension: string) => string> = {
  long: () => 'it is too long',
  empty: () => 'nothing is written',
  'no-number': () => 'no number is written',
  'not-a-number': (part) => `"${part}" is not a number`,
  'no-unit': (part) => `"${part}" has no unit`,
  'other-unit': (part, other) => `${part} is a unit of ${other}`,
  'unknown-unit': (part, _, dimension) => `"${part}" is not a unit of ${dimension}`,
  order: (part, other) => `${part} cannot follow ${other}`,
  'zero-below': (part) => `${part} divides by zero`,
  'fraction-over-one': (part) => `after a whole number ${part} must be less than one`,
  'comma-and-point': () => 'it has a comma and a point. Leave out the thousands separator',
  'two-readings': (part, other) => `${part} can mean two numbers. Write ${other}`,
};
