import type { TorsionKinds } from '../../engine/torsion/torsion-kinds.ts';
import type { Sentences } from './sentences.ts';

export const torsionSentences: Sentences<TorsionKinds> = {
  'torsion/no-reading': () =>
    'Hang a weight at the end of the bar, left and then right, and read the bar’s angle each time.',
  'torsion/turn-too-small': ({ turnRad, sigmaRad, armM, massKg }, w) =>
    `The bar turns by only ${w.angle(turnRad)}; you read it to ${w.angle(sigmaRad)}. Hang more than ${w.mass(massKg)}, or take a longer bar than ${w.length(armM)}.`,
  'torsion/turn-too-large': ({ turnRad, mostRad }, w) =>
    `The bar turns by ${w.angle(turnRad)}. Keep it under ${w.angle(mostRad)}: hang less, or take a shorter bar.`,
  'torsion/ratio-of-no-tube': ({ ratio, leastShare, mostShare }) =>
    `This makes GJ ${ratio.toFixed(2)} of EI. Tubes lie between ${leastShare} and ${mostShare}. Check the arm, the weight and where the bar is clamped.`,
  'torsion/reading-apart': ({ massKg, apartRad, sigmaRad }, w) =>
    `At ${w.mass(massKg)} the bar stands ${w.angle(Math.abs(apartRad))} off the other readings; you read it to ${w.angle(sigmaRad)}. Read it again.`,
};
