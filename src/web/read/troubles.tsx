import { createContext, useContext } from 'react';

/** What the checks say about stored values: path key (`sections/a1/overlap`) to message. */
export type Troubles = ReadonlyMap<string, string>;

export const TroublesContext = createContext<Troubles>(new Map());

export function useTroubles(): Troubles {
  return useContext(TroublesContext);
}
