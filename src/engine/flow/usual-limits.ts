import { rodKindOf } from '../kinds/rod-kinds.ts';
import { byQuantity, criteriaIn } from '../layout/criteria.ts';
import type { LayoutLimits } from '../layout/ladder-request.ts';
import { defaultLimits } from '../layout/layout-defaults.ts';
import type { Choices } from './choices.ts';

/** What a layout is judged by where the builder says nothing: one rule for all rods, and what is a kind's own. */
export function usualLimits({ rodKind, ...round }: JudgedRod, lengthM: number): LayoutLimits {
  return { ...defaultLimits(lengthM, isOnTop(round)), ...rodKindOf(rodKind).limits };
}
type JudgedRod = Pick<Choices, 'rodKind' | 'side' | 'spiral'>;

/** The builder's own where he says any; what does not count on this rod is left out. */
export function limitsOf(choices: JudgedRod & Pick<Choices, 'limits'>, lengthM: number): LayoutLimits {
  const usual = usualLimits(choices, lengthM);
  const first = choices.limits.firstLineAngleRad ?? usual.firstLineAngleRad;
  return {
    ...byQuantity(({ quantity }) => choices.limits[quantity] ?? usual[quantity]!, criteriaIn(usual)),
    ...(first === undefined ? {} : { firstLineAngleRad: first }),
  };
}

/** All rings on the side that the line bends the blank towards it on: between them it may lie on the blank. */
export function isOnTop({ side, spiral }: Pick<Choices, 'side' | 'spiral'>): boolean {
  return side === 'over' && spiral === undefined;
}
