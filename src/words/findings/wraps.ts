import type { WrapKinds } from '../../engine/wraps/wrap-kinds.ts';
import { wrapName } from '../wrap-name.ts';
import type { Sentences } from './sentences.ts';

export const wrapSentences: Sentences<WrapKinds> = {
  'wraps/turns-uncounted': (_, w) =>
    `Count the turns of thread in a measured width, such as 40 over ${w.length(0.00635)}. Until then common thread is assumed.`,
  'wraps/turn-width': ({ turnM }, w) =>
    `Count the turns again. One turn is ${w.thread(turnM)} wide here; thread is ${w.thread(0.00008)} to ${w.thread(0.00036)}.`,
  'wraps/trim-short': ({ turns }) =>
    `${turns} trim turns cannot lock their own ends. Use a thread loop, or 3 turns and more.`,
  'wraps/over-spigot-gap': ({ wrap }) => `Move the guide. ${wrapName(wrap)} would lie over a spigot's gap.`,
  'wraps/over-section-end': ({ wrap, section, overM, mostM }, w) =>
    `Shorten ${wrapName(wrap)} to ${w.length(mostM)} or move the guide. It runs ${w.length(overM)} over the end of ${section}.`,
  'wraps/cannot-lock': ({ wrap, turns, lockTurns }) =>
    `Lengthen ${wrapName(wrap)}, or lock with fewer turns. Its ${turns} turns cannot lock both tags under ${lockTurns} each.`,
  'wraps/signature-under-grip': ({ fromButtM, gripM }, w) =>
    `Move the signature forward. It begins ${w.length(fromButtM)} from the butt, under the grip (front at ${w.length(gripM)}).`,
  'wraps/over-signature': ({ wrap, clearM }, w) =>
    `${wrapName(wrap)} would lie on the signature. Write it from ${w.length(clearM)} off the butt end to the next wrap, or shorter.`,
  'wraps/overlap': ({ wrap, next, overlapM }, w) =>
    `Shorten ${wrapName(wrap)} or ${wrapName(next)}, or move the guide. They overlap by ${w.length(overlapM)}.`,
};
