import type { BendKinds } from '../../engine/bend/bend-kinds.ts';
import type { Sentences } from './sentences.ts';

export const bendSentences: Sentences<BendKinds> = {
  'bend/line-closes': ({ reachedPercent, ring, isLast }) =>
    `Pull less: the rod is too soft there. Beyond ${reachedPercent.toFixed(1)} % of the load the line pulls ring ${ring} from the tip against ${isLast ? 'the reel' : 'the next ring'}. The bend shown is that part of the load.`,
  'bend/snaps': ({ reachedPercent }) =>
    `Pull less. At ${reachedPercent.toFixed(1)} % of the load the rod has no stable bend near the last one and snaps to another. The bend shown is the one it falls into.`,
  'bend/lost': ({ reachedPercent, steps }) =>
    `Pull less. No bend was found beyond ${reachedPercent.toFixed(2)} % of the load in ${steps} steps. The bend shown is that part of the load.`,
  'bend/friction-unsettled': () =>
    'The pulls that friction leaves did not settle. The bend shown is the last one tried.',
  'bend/contact-unsettled': () =>
    'The places where the line lies on the blank did not settle. The bend shown is the last one tried.',
};
