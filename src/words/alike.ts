import type { Innovation } from '../engine/series/innovation.ts';

/** How a blank stands against the others of its series. */
export const alikeWords: Readonly<Record<Innovation['verdict'], string>> = {
  like: 'like its series',
  doubtful: 'doubtful',
  unlike: 'unlike its series',
};
