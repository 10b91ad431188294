import type { MarksKinds } from '../../engine/marks/marks-list.ts';
import type { Sentences } from './sentences.ts';

export const marksSentences: Sentences<MarksKinds> = {
  'marks/over-spigot-gap': ({ guide, upper, lower }) =>
    `Move guide ${guide}. It is over the spigot's gap between ${upper} and ${lower}, where nothing can be marked.`,
};
