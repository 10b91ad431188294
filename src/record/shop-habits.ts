import type { Cell, DocumentState } from './operation.ts';

/** Collections that a build and its shop have in common. */
const shared = ['wraps', 'finish', 'handle'];

/**
 * The build with the shop's habits where it says nothing itself; what neither says is left to common practice.
 * Neither state is altered, and a shop without habits gives the build as it is.
 */
export function withHabits(build: DocumentState, shop: DocumentState): DocumentState {
  let cells: Map<string, Cell> | undefined;
  for (const [key, cell] of shop.cells) {
    if (cell.value === null || !shared.includes(key.slice(0, key.indexOf('/')))) continue;
    if ((build.cells.get(key)?.value ?? null) !== null) continue;
    cells ??= new Map(build.cells);
    cells.set(key, cell);
  }
  return cells ? { ...build, cells } : build;
}
