/** Fills the bytes with random values; `crypto.getRandomValues` in browsers (plain http included) and Node. */
export type FillRandom = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array<ArrayBuffer>;

/** Without look-alikes (0 o, 1 i l), so an id can be read aloud. 32 letters: five bits each. */
const alphabet = '23456789abcdefghjkmnpqrstuvwxyz_';

/** An id any device can make alone; 12 letters are 60 random bits. */
export function makeId(fillRandom: FillRandom, letters = 12): string {
  const bytes = fillRandom(new Uint8Array(letters));
  return Array.from(bytes, (byte) => alphabet[byte & 31]).join('');
}
