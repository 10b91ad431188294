import type { RepairKinds } from '../../engine/repair/broken-tip.ts';
import type { Sentences } from './sentences.ts';

export const repairSentences: Sentences<RepairKinds> = {
  'repair/no-guide-left': () => 'Measure again how much is gone. No guide is left above the grip.',
  'repair/no-spread': () =>
    'Place the upper guides under Layout for the shortened rod, or by eye under load. No spread fits between the new tip-top and those below.',
};
