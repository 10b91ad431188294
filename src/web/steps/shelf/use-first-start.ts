import { useState } from 'react';
import { habitsOfLanguages, type RegionHabits } from '../../../words/region-habits.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';

export interface FirstStart {
  chosen: Required<RegionHabits>;
  choose(part: Partial<RegionHabits>): void;
  keep(): void;
}

/**
 * How a new shop measures, prints and pays, preset by the browser's language; undefined once it was said. Going on
 * without an answer keeps what is shown.
 */
export function useFirstStart(): FirstStart | undefined {
  const { settings, value, write } = useShop();
  const [own, setOwn] = useState<Partial<RegionHabits>>({});
  const said = [textOf(settings, 'unitSystem'), textOf(settings, 'paper'), value(['rates', '-', 'currency'])];
  if (said.some((one) => typeof one === 'string')) return undefined;
  const chosen = { currency: 'EUR', ...habitsOfLanguages(navigator.languages), ...own };
  return {
    chosen,
    choose: (part) => setOwn({ ...own, ...part }),
    keep: () =>
      write('firstStart', [
        { path: ['settings', '-', 'unitSystem'], value: chosen.unitSystem },
        { path: ['settings', '-', 'paper'], value: chosen.paper },
        { path: ['rates', '-', 'currency'], value: chosen.currency },
      ]),
  };
}
