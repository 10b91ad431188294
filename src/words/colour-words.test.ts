import { expect, test } from 'vitest';
import { colourWords, threadCalled } from './colour-words.ts';

/** Named colours of CSS Color Module Level 4 (W3C) whose name is plain English: the hex is the module's. */
const namedByTheModule: [hex: string, name: string][] = [
  ['#000000', 'black'],
  ['#ffffff', 'white'],
  ['#808080', 'grey'],
  ['#d3d3d3', 'light grey'],
  ['#696969', 'dark grey'], // dimgray
  ['#ff0000', 'red'],
  ['#8b0000', 'dark red'],
  ['#ffa500', 'orange'],
  ['#ffd700', 'gold'],
  ['#ffff00', 'yellow'],
  ['#808000', 'olive'],
  ['#8b4513', 'brown'], // saddlebrown
  ['#008000', 'green'],
  ['#006400', 'dark green'],
  ['#90ee90', 'light green'],
  ['#40e0d0', 'turquoise'],
  ['#0000ff', 'blue'],
  ['#00008b', 'dark blue'],
  ['#add8e6', 'light blue'],
  ['#800080', 'purple'],
  ['#ff00ff', 'magenta'],
  ['#ffc0cb', 'pink'],
  ['#ff69b4', 'pink'], // hotpink
];

test.each(namedByTheModule)('%s is called %s, as in the standard’s own list', (hex, name) => {
  expect(colourWords(hex)).toBe(name);
});

test('every colour has a word, and a near colour hardly another', () => {
  const steps = [0, 51, 102, 153, 204, 255];
  const hex = (value: number) => value.toString(16).padStart(2, '0');
  const all = steps.flatMap((r) => steps.flatMap((g) => steps.map((b) => `#${hex(r)}${hex(g)}${hex(b)}`)));
  expect(all.filter((one) => !/^((dark|light) )?[a-z]+$/.test(colourWords(one)))).toEqual([]);
  expect(colourWords('#1F4D3A')).toBe(colourWords('#1f4d3a'));
});

test('the spool’s name stands before ours; no code of a screen stands behind either', () => {
  expect(threadCalled({ colour: '#1f4d3a' })).toBe('dark green');
  expect(threadCalled({ colour: '#c08a2d' })).toBe('light brown');
  expect(threadCalled({ colour: '#1f4d3a', name: 'pine 12' })).toBe('pine 12');
});
