import type { FrequencyKinds, FrequencyReasons } from '../../engine/frequency/frequency-kinds.ts';
import type { Sentences } from './sentences.ts';

export const frequencySentences: Sentences<FrequencyKinds & FrequencyReasons> = {
  'frequency/no-mass': () =>
    'The rod has no mass that can move. Give massPerLength, or masses in front of the clamp.',
  'frequency/few-masses': ({ modes, masses }) =>
    `Ask for fewer modes, or give massPerLength. A massless rod with ${masses} masses has ${masses} frequencies, not ${modes}.`,
  'frequency/beyond-rounding': ({ mode, times, modes }) =>
    `Leave out masses beside the clamp, or ask for ${modes} modes. Frequency ${mode} is over ${times} times the first and cannot be told from rounding.`,
  'frequency/still-moving': ({ change, steps }) =>
    `The frequencies still moved by ${change.toExponential(1)} of their squares after ${steps} steps.`,
};
