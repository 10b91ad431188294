/**
 * A thread's colour in plain words, for a colour that was only picked: by hue and lightness of the HSL model (CSS
 * Color Module Level 4, section on HSL), cut where the module's own named colours are cut. The words are ours.
 */
import type { ThreadColour } from '../engine/wraps/wrap-choices.ts';

/** As the spool calls it, or else by hue and lightness. */
export function threadCalled({ name, colour }: Pick<ThreadColour, 'name' | 'colour'>): string {
  return name ?? colourWords(colour);
}

/** `dark green`; `colour` as `#rrggbb`. */
export function colourWords(colour: string): string {
  const { hueDeg, lightness, chroma, most } = hslOf(colour);
  if (chroma < greyChroma) return greyWords(lightness);
  if (hueDeg >= 12 && hueDeg < 41 && most < 0.82)
    return graded('brown', lightness, { dark: 0.24, light: 0.44 });
  if (hueDeg >= 41 && hueDeg < 70 && lightness < 0.36)
    return graded('olive', lightness, { dark: 0.15, light: 1 });
  if ((hueDeg >= 345 || hueDeg < 12) && lightness > 0.75) return 'pink';
  if (hueDeg >= 301 && hueDeg < 345 && lightness > 0.62) return 'pink';
  if (hueDeg >= 285 && hueDeg < 345 && most < 0.75)
    return graded('purple', lightness, { dark: 0.2, light: 0.7 });
  const hue = hues.find(({ toDeg }) => hueDeg < toDeg) ?? hues[0];
  return graded(hue.word, lightness, { dark: hue.dark ?? 0.3, light: 0.7 });
}

const greyChroma = 0.07;
/** `dark`: below it the colour is called dark; greens and purples look light longer. */
const hues: { toDeg: number; word: string; dark?: number }[] = [
  { toDeg: 12, word: 'red' },
  { toDeg: 41, word: 'orange' },
  { toDeg: 54, word: 'gold' },
  { toDeg: 70, word: 'yellow' },
  { toDeg: 165, word: 'green', dark: 0.22 },
  { toDeg: 194, word: 'turquoise', dark: 0.22 },
  { toDeg: 255, word: 'blue' },
  { toDeg: 285, word: 'purple', dark: 0.2 },
  { toDeg: 345, word: 'magenta' },
];

function greyWords(lightness: number): string {
  if (lightness < 0.1) return 'black';
  return lightness > 0.95 ? 'white' : graded('grey', lightness, { dark: 0.42, light: 0.7 });
}

function graded(word: string, lightness: number, { dark, light }: { dark: number; light: number }): string {
  return lightness < dark ? `dark ${word}` : lightness > light ? `light ${word}` : word;
}

function hslOf(colour: string) {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const [most, least] = [Math.max(red, green, blue), Math.min(red, green, blue)];
  const chroma = most - least;
  const sixth =
    chroma === 0
      ? 0
      : most === red
        ? (green - blue) / chroma
        : most === green
          ? (blue - red) / chroma + 2
          : (red - green) / chroma + 4;
  return { hueDeg: (60 * sixth + 360) % 360, lightness: (most + least) / 2, chroma, most };
}
