import type { RotationKinds, RotationReasons } from '../../engine/rotation/rotation-kinds.ts';
import type { Sentences } from './sentences.ts';

export const rotationSentences: Sentences<RotationKinds & RotationReasons> = {
  'rotation/loads-equal': ({ massKg }, w) => `Both loads are ${w.mass(massKg)}. Read two that differ.`,
  'rotation/few-directions': ({ directions }) =>
    `Read 0°, 45°, 90° and 135° at least. Readings in ${directions} directions cannot tell bow from stiffness.`,
  'rotation/turns-bunched': ({ turns }) =>
    `Spread the turns evenly: 0°, 45°, 90° and 135° at least. These ${turns} cannot tell bow from stiffness.`,
  'rotation/circle-uncovered': ({ quantity }) =>
    quantity === 'bow'
      ? 'Spread the turns over a whole turn. The bow is three times less certain than it could be.'
      : 'Spread the turns over half a turn. The stiffness difference is three times less certain than it could be.',
  'rotation/scatter': ({ scatterM, statedM }, w) =>
    `Your readings scatter by ${w.calliper(scatterM)}, not by ${w.calliper(statedM)} as you said. The ± below allow for it.`,
  'rotation/loads-alike': ({ apartM }, w) =>
    `Take a heavier second weight. The two change the drop by only ${w.fine(apartM)}.`,
  'rotation/odd-reading': ({ dropM, offM }, w) =>
    `Read this drop again. At ${w.fine(dropM)} it is ${w.calliper(Math.abs(offM))} ${offM > 0 ? 'more' : 'less'} than the other turns allow. It is left out.`,
  'rotation/second-load-unsaid': () =>
    'Say how heavy the second weight was. Without it, bow and stiffness cannot be told apart.',
  'rotation/unsettled': ({ steps }) =>
    `Bow and stiffness did not settle in ${steps} steps. Read the turns again.`,
};
