import type { FrequencyKinds } from '../../engine/frequency/frequency-kinds.ts';
import type { Sentences } from './sentences.ts';

export const frequencySentences: Sentences<FrequencyKinds> = {
  'frequency/no-mass': () =>
    'The rod has no mass that can move. Give massPerLength, or masses in front of the clamp.',
  'frequency/few-masses': ({ modes, masses }) =>
    `Ask for fewer modes, or give massPerLength. A massless rod with ${masses} masses has ${masses} frequencies, not ${modes}.`,
};
