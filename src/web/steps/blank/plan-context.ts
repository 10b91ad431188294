import { createContext, useContext } from 'react';
import type { Plan } from './use-plan.ts';

export const PlanContext = createContext<Plan | undefined>(undefined);

/** The plan of the blank at hand; undefined until it can be made. */
export function usePlanContext(): Plan | undefined {
  return useContext(PlanContext);
}
