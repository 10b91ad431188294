import { type RodKind, rodKindOf } from '../kinds/rod-kinds.ts';
import type { LayoutLimits } from '../layout/ladder-request.ts';
import { defaultLimits } from '../layout/layout-defaults.ts';

/** What a layout is judged by where the builder says nothing: one rule for all rods, and what is a kind's own. */
export function usualLimits(rodKind: RodKind, lengthM: number): LayoutLimits {
  return { ...defaultLimits(lengthM), ...rodKindOf(rodKind).limits };
}
