import type { TapeStep } from '../engine/units/tape-step.ts';
import type { Cell, DocumentState } from './operation.ts';
import { tapeSteps } from './read-choices.ts';

/** Collections that a build and its shop have in common. */
const shared = ['wraps', 'finish', 'handle', 'sorting', 'layout'];

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

/**
 * The habits that `withHabits` lays over this build, and the settings that say to which step its marks are
 * rounded: what an exported file carries, so that its numbers are the same where the shop is not.
 */
export function habitsOf(build: DocumentState, shop: DocumentState): DocumentState {
  const filled = withHabits(build, shop);
  const laidOver = [...filled.cells].filter(([key, cell]) => build.cells.get(key) !== cell);
  const settings = [...shop.cells].filter(
    ([key, { value }]) => value !== null && (key === stepKey || key === systemKey),
  );
  const cells = new Map([...laidOver, ...settings]);
  return { ...shop, cells };
}

const stepKey = 'settings/-/tapeStep';
const systemKey = 'settings/-/unitSystem';

/** The step of a shop's tape, where it says one or works in millimetres. */
export function tapeStepOf({ cells }: DocumentState): TapeStep | undefined {
  const step = tapeSteps.find((one) => one === cells.get(stepKey)?.value);
  return step ?? (cells.get(systemKey)?.value === 'mm' ? '1 mm' : undefined);
}

/** Whether a file may carry this of a shop: nothing of its prices, printers or guides leaves with a build. */
export function isHabit(collection: string, field: string): boolean {
  return shared.includes(collection) || [stepKey, systemKey].includes(`${collection}/-/${field}`);
}
