/** What the live view says, beside the numbers it draws. */
import type { Writer } from './writer.ts';

/** Why there is no picture yet, and what to do. */
export const cameraWords = {
  asking: 'Allow the camera when the browser asks. Nothing is kept unless you press Keep.',
  resting: 'The camera rests while this page is hidden.',
  refused: 'The camera was refused. Allow it for this page in the browser’s settings, then press Try again.',
  none: 'No camera was found, or another program holds it. Close that program, then press Try again.',
  insecure:
    'This browser gives its camera only over https. Pair the phone from Settings, or open this page on the computer that runs Fairbend.',
} as const;

export const wallUnknownWords =
  'Measure your wall in Settings first: at least four printed marks. Or take one picture of the load test and give its marks’ places.';

export function fewMarksWords(known: number): string {
  const seen = known === 0 ? 'None is' : known === 1 ? 'One is' : `${known} are`;
  return `Turn the camera until it shows four marks of the wall. ${seen} seen.`;
}

export const tapsWantedWords = {
  butt: 'Tap where the blank leaves the clamp or grip.',
  tip: 'Now tap the tip.',
} as const;

export const lostWords = 'The blank was lost. Look for what lies over it, or tap its ends again.';

export function limitWords(limit: string): string {
  return `limit ${limit}`;
}

export function spanWords(ring: number): string {
  return ring === 0 ? 'tip-top to 1' : `${ring} to ${ring + 1}`;
}

export function hangWords(massKg: number, w: Writer): string {
  return `Hang ${w.load(massKg)}.`;
}

/** What will be seen if the prediction is right. */
export function restWords(allowedM: number | undefined, w: Writer): string {
  return allowedM === undefined
    ? 'The rod should come to rest near the dashed line. How near is not known: nothing was hung on this blank yet.'
    : `The rod should come to rest on the dashed line, its tip within ${w.tick(allowedM)} of the cross.`;
}

export function missWords(apartM: number, w: Writer): string {
  return `The tip is ${w.tick(apartM)} from the cross.`;
}

/** A spiral's guides beside the picture's plane are not read; `last` is the last one that is, 0 where none is. */
export function spiralLiveWords(last: number, guides: number): string {
  const read = last === 0 ? 'No guide of this spiral is read here.' : `Guides 1 to ${last} are read.`;
  const first = Math.max(1, last + 1);
  return `${read} From guide ${first} to guide ${guides} the line turns round the blank, beside the picture’s plane: go by their figures on Layout, and look at them under load.`;
}

export const triedWords = 'Tried on drawn pictures only, never yet on a real one.';
