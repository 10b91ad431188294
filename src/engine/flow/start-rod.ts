import { commonGuides } from '../kinds/common-build.ts';
import { guideKindOf, guideName } from '../kinds/guides.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { dressingOf, type RodToDress, withDressing } from './finished-rod.ts';
import { type LayoutQuestion, ringsAndReel } from './layout-question.ts';

type Rings = Pick<LadderRequest, 'buttAngleRad' | 'reel' | 'guides' | 'tipTop'>;

/**
 * What the start is read with: the builder's own guides where it has as many marks, else as many common ones; with
 * thread and finish on them either way, so that nothing but the marks differs.
 */
export function startRings(
  { bench, choices, blank, diameters }: RodToDress,
  { request, startFromTipM }: LayoutQuestion,
): Rings {
  const count = startFromTipM.length;
  if (count === choices.guides.length || count < 2) {
    const { buttAngleRad, reel, guides, tipTop } = request;
    return { buttAngleRad, reel, guides, tipTop };
  }
  const { guides } = commonGuides({ ...choices, blankLengthM: blank.lengthM }, count);
  const rings = ringsAndReel(bench, choices, guides, startFromTipM, diameters);
  const feet = guides.map(({ kind, size, lengthM }) => {
    const declared = guideKindOf(kind);
    return {
      name: guideName({ kind, size }),
      lengthM,
      feet: declared.feet(lengthM),
      stripping: declared.single,
    };
  });
  const dressed = { ...choices, dress: { ...choices.dress, feet } };
  const dressing = dressingOf({ bench, choices: dressed, blank, diameters }, startFromTipM);
  const massesKg = withDressing(rings.guides.massesKg ?? [], dressing);
  return { ...rings, guides: { ...rings.guides, massesKg } };
}
