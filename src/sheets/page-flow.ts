import type { Mark } from './drawing.ts';

/** A piece of a page that stays together. */
export interface Block {
  heightMm: number;
  draw: (topMm: number) => Mark[];
}

/** Blocks set one below the other, a new page where the next does not fit; at least one page. */
export function flowBlocks(
  blocks: readonly Block[],
  { topMm, bottomMm, gapMm }: { topMm: number; bottomMm: number; gapMm: number },
): Mark[][] {
  const pages: Mark[][] = [[]];
  let y = topMm;
  for (const { heightMm, draw } of blocks) {
    if (y + heightMm > bottomMm && y > topMm) {
      pages.push([]);
      y = topMm;
    }
    pages.at(-1)?.push(...draw(y));
    y += heightMm + gapMm;
  }
  return pages;
}
