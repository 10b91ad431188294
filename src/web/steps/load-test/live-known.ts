import type { LiveKnown } from '../../../image/live/look-live.ts';
import type { DocumentState } from '../../../record/operation.ts';
import { readLoadTests } from '../../../record/read-load-tests.ts';
import { tracedPhoto } from '../../../record/traced-curves.ts';

/** What this build's earlier pictures tell of the wall: places of printed marks, and where the blank leaves its hold. */
export function knownOfPictures(document: DocumentState): Pick<LiveKnown, 'wall' | 'clamp'> {
  const tests = readLoadTests(document);
  const places = new Map<number, readonly [number, number]>();
  for (const { number, atM, role } of tests.flatMap(({ photos }) =>
    photos.flatMap((photo) => photo.places),
  )) {
    if (role === 'mark' && number !== undefined && atM) places.set(number, atM);
  }
  const traces = tests.flatMap((test) => tracedPhoto(test)?.trace ?? []);
  const hold = traces.at(-1)?.points[0];
  return {
    wall: [...places].map(([number, atM]) => ({ number, atM })),
    // The marks' own error and the clamp's play between two days.
    ...(hold ? { clamp: { atM: [hold.xM, hold.yM] as const, sigmaM: 0.005 } } : {}),
  };
}
