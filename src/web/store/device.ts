import { type FillRandom, makeId } from '../../record/identity.ts';

/** `${device}-${session}`: the device is this browser's for good, the session one opening of one document. */
export function writerName(storage: Storage | undefined, fillRandom: FillRandom): string {
  return `${deviceName(storage, fillRandom)}-${makeId(fillRandom, 6)}`;
}

function deviceName(storage: Storage | undefined, fillRandom: FillRandom): string {
  const key = 'fairbend-device';
  try {
    const known = storage?.getItem(key);
    if (known && /^[a-z0-9_]{4,40}$/.test(known)) return known;
    const made = makeId(fillRandom, 10);
    storage?.setItem(key, made);
    return made;
  } catch {
    return makeId(fillRandom, 10);
  }
}
