import type { JoinKinds, LoadTestReasons } from '../../engine/load-test/join-kinds.ts';
import type { Sentences } from './sentences.ts';

export const joinSentences: Sentences<JoinKinds & LoadTestReasons> = {
  'load-test/few-points': () => 'One of the two curves has fewer than eight points. Read it again.',
  'load-test/close-up-elsewhere': () =>
    'Use the same marks in both pictures, and tap the same blank. The close-up does not lie along the whole rod.',
  'load-test/close-up-beside': ({ apartM, usualM }, w) =>
    `Photograph both again without touching the rod. The close-up is ${w.fine(apartM)} off the whole rod; ±${w.fine(usualM)} is usual. Check the marks' places too.`,
  'load-test/close-up-shape': ({ apartM }, w) =>
    `Look at both curves, or photograph both again. The close-up bends differently from the whole rod there, by ${w.fine(apartM)}.`,
  'load-test/close-up-tip': ({ beyondM }, w) =>
    `Tap the tip again in both pictures. The close-up's tip is ${w.fine(beyondM)} past the other.`,
  'load-test/close-up-out-of-date': () => 'The curve is out of date. Read the close-up again.',
  'load-test/bent-too-far': () => 'Take less: this weight bends the rod too far to follow.',
  'load-test/curve-refused': () => 'Read the curve again: it makes no sense.',
  'load-test/no-bend': () => 'Take less: under this load the rod finds no steady bend.',
  'load-test/curve-length': ({ curveM, rodM }, w) =>
    `Check where the butt was tapped (at the front of the grip), the marks' measures, and the lengths in this build. The curve is ${w.length(curveM)} long, the blank in front of the grip ${w.length(rodM)}.`,
  'load-test/butt-angle': ({ seenRad, typedRad }, w) =>
    `Level the marks, or read the butt angle again. By the picture the butt rises ${w.angle(seenRad)}; you entered ${w.angle(typedRad)}.`,
};
