import type { StandKinds } from '../../engine/stiffness/stand-kinds.ts';
import { orElse } from './fit.ts';
import type { Sentences } from './sentences.ts';

export const standSentences: Sentences<StandKinds> = {
  'stand/camera-moved': ({ picture, shiftM }, w) =>
    `Picture ${picture} shows the blank ${w.length(shiftM)} off the other pictures: the camera moved, or its curve follows something else. Look at the drawn curve. If it is right, take all pictures again.`,
  'stand/clamp-slipped': ({ picture, turnRad }, w) =>
    `Before picture ${picture} the blank turned ${w.angle(Math.abs(turnRad))} ${turnRad > 0 ? 'up' : 'down'} in the clamp. Tighten the clamp and take all pictures again. Until then this and the later pictures count with a tilt of their own.`,
  'stand/weights-swapped': ({ picture, other, massKg, otherKg }, w) =>
    `Pictures ${other} and ${picture} fit each other's weight (${w.mass(otherKg)} and ${w.mass(massKg)}). Swap them. They are used the other way round.`,
  'stand/weight-off': ({ picture, massKg, likelyKg, other }, w) =>
    `Picture ${picture} bends as under ${w.mass(likelyKg)}, not ${w.mass(massKg)}.${other === undefined ? ' Weigh what hung' : ` Or the weight of picture ${other} is wrong. Weigh both`}. Until then it counts as ${w.mass(likelyKg)}.`,
  'stand/still-swings': ({ picture, offM, ...or }, w) =>
    `Wait until the tip is still, then take picture ${picture} again. It shows the tip ${w.length(Math.abs(offM))} ${offM > 0 ? 'lower' : 'higher'} than the other pictures allow. Did it swing, or does another weight hang? Until then this is corrected for.${orElse(or, w)}`,
  'stand/tip-smeared': ({ picture }) =>
    `Wait until the tip is still, then take picture ${picture} again. Its curve is ragged near the tip: did the blank still swing?`,
  'stand/other-blank': ({ picture }) =>
    `Picture ${picture} shows a bend that the other pictures' blank cannot have. Check that it is the same blank, hung as stated, and take the picture again. It is left out.`,
  'stand/wall-unlevel': ({ turnRad, plusMinusRad }, w) =>
    `The marks lean ${w.angle(Math.abs(turnRad))} (± ${w.angle(plusMinusRad)}) off level, by the blank's own weight. Hold a plumb line to them and measure their places again.`,
};
