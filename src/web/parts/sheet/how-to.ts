/** Which page of the manual (docs/manual) tells how this step's work is done; the words stand behind “How to”. */
export interface HowTo {
  page: string;
  words: string;
}

const pages: Readonly<Record<string, HowTo>> = {
  blank: { page: 'sections', words: 'measure the sections' },
  'blank/sections': { page: 'sections', words: 'measure the sections' },
  'blank/readings': { page: 'readings', words: 'read a drop' },
  'blank/stiffness': { page: 'stiffness', words: 'read the stiffness' },
  'blank/spine': { page: 'spine', words: 'find sweep and spine' },
  'blank/swing': { page: 'swing', words: 'count swings' },
  handle: { page: 'handle', words: 'plan the handle' },
  layout: { page: 'layout', words: 'place the guides' },
  marks: { page: 'marks', words: 'mark the sections' },
  'load-test': { page: 'load-test', words: 'hang the test load' },
  guides: { page: 'guides', words: 'sort the guides' },
  wraps: { page: 'wraps', words: 'plan the wraps' },
  finish: { page: 'finish', words: 'mix and brush' },
  plan: { page: 'plan', words: 'work at the bench' },
  papers: { page: 'papers', words: 'use the papers' },
};

/** Of a step and, where it has several, of its screen. */
export function howTo(step: string, screen?: string): HowTo | undefined {
  return pages[`${step}/${screen}`] ?? pages[step];
}
