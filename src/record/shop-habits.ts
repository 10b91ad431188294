import { tapeSteps } from './fields/layout.ts';
import type { Cell, DocumentState } from './operation.ts';
import { oneOf } from './read-values.ts';
import { habitCollections } from './schema.ts';

const shared: readonly string[] = habitCollections;

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
 * rounded and what it is weighed in: what an exported file carries, so that it reads the same where the shop is not.
 */
export function habitsOf(build: DocumentState, shop: DocumentState): DocumentState {
  const filled = withHabits(build, shop);
  const laidOver = [...filled.cells].filter(([key, cell]) => build.cells.get(key) !== cell);
  const settings = [...shop.cells].filter(([key, { value }]) => value !== null && carried.includes(key));
  const cells = new Map([...laidOver, ...settings]);
  return { ...shop, cells };
}

/** Settings that a file carries. */
const carried = ['unitSystem', 'tapeStep', 'weighsIn', 'temperatureIn'].map((name) => `settings/-/${name}`);

/** How a shop writes quantities, as far as it says. */
export function unitsOf({ cells }: DocumentState) {
  const setting = (name: string) => {
    const value = cells.get(`settings/-/${name}`)?.value;
    return typeof value === 'string' ? value : undefined;
  };
  const system = oneOf(setting('unitSystem'), ['inch', 'mm']);
  return {
    system,
    /** Where it says one or works in millimetres. */
    tapeStep: oneOf(setting('tapeStep'), tapeSteps) ?? (system === 'mm' ? ('1 mm' as const) : undefined),
    weighsIn: oneOf(setting('weighsIn'), ['g', 'oz']),
    temperatureIn: oneOf(setting('temperatureIn'), ['C', 'F']),
  };
}

/** Whether a file may carry this of a shop: nothing of its prices, printers or guides leaves with a build. */
export function isHabit(collection: string, field: string): boolean {
  return shared.includes(collection) || carried.includes(`${collection}/-/${field}`);
}
