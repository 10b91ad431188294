import { munkres } from 'munkres';
import { useMemo } from 'react';
import { type BagGuide, type SortedBag, sortBag } from '../../engine/guides/bag-sorting.ts';
import { checkGuideSet, type SetGuide } from '../../engine/guides/check-guide-set.ts';
import { guideKindOf } from '../../engine/kinds/guides.ts';
import { singleRow } from '../../record/document.ts';
import { bagPlaces, readBag, readGuideSet, readSortingRules } from '../../record/read-guide-set.ts';
import { useBench } from './bench.tsx';
import { useBuild } from './build-context.ts';
import { siOf } from './values.ts';

interface RackOnBench {
  set: SetGuide[];
  bag: BagGuide[];
  findings: ReturnType<typeof checkGuideSet>;
  /** Sizes of the set that come from the bag. */
  sizes: string[];
  sorted: SortedBag;
  /** Whether any guide has its mark. */
  placed: boolean;
  /** A guide's number in the bag, counted from 1. */
  numberOf(bagId: string): number;
}

/** The set, the bag and the best use of it; undefined while the blank has no diameters. */
export function useRack(): RackOnBench | undefined {
  const { document } = useBuild();
  const { filled, blank, choices, profile } = useBench();
  const knotM = siOf(singleRow(filled, 'layout'), 'knot');
  return useMemo(() => {
    if (!blank || !choices || profile.length === 0) return undefined;
    const set = readGuideSet(document, choices.guides);
    const places = bagPlaces(set, profile);
    const bag = readBag(document);
    return {
      set,
      bag,
      findings: checkGuideSet(set, blank, { profile, knotM }),
      sizes: [...new Set(set.filter(({ kind }) => !guideKindOf(kind).single).map(({ size }) => size))],
      sorted: sortBag(bag, places, munkres, readSortingRules(filled)),
      placed: places.length > 0,
      numberOf: (bagId) => bag.findIndex((guide) => guide.id === bagId) + 1,
    };
  }, [document, filled, blank, choices, profile, knotM]);
}
