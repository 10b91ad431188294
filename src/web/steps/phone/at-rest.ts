/**
 * From look to look, in turn: of unlike lengths, so that no swing comes back to where it was after each of them.
 * Four such pauses without a difference are rest; after two of them one swing in eleven was still taken for it.
 */
const pausesMs = [450, 330, 240, 180];
/** Given up waiting for stillness; the picture is not taken. */
export const mostLooks = 40;

/** Whether what is looked at again and again rests. */
export interface RestWatch<T> {
  /** `moved` against the look before; `rests` once all pauses went by without. */
  see(look: T): { moved: boolean; rests: boolean; nextLookMs: number };
}

export function watchForRest<T>(hasMoved: (before: T, now: T) => boolean): RestWatch<T> {
  let before: T | undefined;
  let still = 0;
  let looks = 0;
  return {
    see(look) {
      const moved = before !== undefined && hasMoved(before, look);
      still = before === undefined || moved ? 0 : still + 1;
      before = look;
      return {
        moved,
        rests: still >= pausesMs.length,
        nextLookMs: pausesMs[looks++ % pausesMs.length],
      };
    },
  };
}
