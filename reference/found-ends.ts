/** Butt and tip found without taps in painted pictures, counted. Run by `npm run pictures -- --ends N`. */
import { findEnds } from '../src/image/ends/find-ends.ts';
import { endMisses, endsPhoto } from '../test/support/ends-photo.ts';

export interface FoundEndsRow {
  seed: number;
  status: 'found' | 'unsure' | 'refused';
  /** Of what was found or guessed; none where nothing was. */
  missesM?: { butt: number; tip: number };
  /** Both within the tolerance. */
  right: boolean;
  seconds: number;
}

/** So near is right: a quarter of an inch. */
export const endToleranceM = 0.00635;

export function* foundEnds(count: number, firstSeed: number, widthPx: number): Generator<FoundEndsRow> {
  for (let seed = firstSeed; seed < firstSeed + count; seed++) {
    const photo = endsPhoto(seed, widthPx);
    const started = performance.now();
    const answer = findEnds(photo.known, photo.pixels);
    const seconds = (performance.now() - started) / 1e3;
    const ends = answer.status === 'refused' ? undefined : answer.ends;
    const missesM = ends && endMisses(photo, ends);
    const right = missesM !== undefined && Math.max(missesM.butt, missesM.tip) < endToleranceM;
    yield { seed, status: answer.status, missesM, right, seconds };
  }
}
