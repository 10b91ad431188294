import { useMemo } from 'react';
import { type StripPaper, type StripsOn, usualRollM } from '../../../sheets/paper-size.ts';
import { useShop } from '../../read/shop.tsx';
import { siOf, textOf } from '../../read/values.ts';

/** What the shop prints its strips on; its sheets until it chose. */
export function useStripPaper(): StripsOn {
  const { settings, paper } = useShop();
  return useMemo(() => {
    const chosen = (textOf(settings, 'stripPaper') ?? paper) as StripPaper;
    if (chosen !== 'roll') return { paper: chosen };
    const widthM = siOf(settings, 'rollWidth') ?? usualRollM;
    return { paper: chosen, roll: { widthM, lengthM: siOf(settings, 'rollLength') } };
  }, [settings, paper]);
}
