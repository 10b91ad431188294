/**
 * What to order for a rod, with spares: tip-tops half a size below and above, since plating narrows tubes; one
 * running guide more of each size, two where the rod takes four or more; one and a half times the thread, two and a
 * half times the finish. Common practice, no source; the builder changes any of it.
 */
import { chooseTipTube } from '../handle/tip-tube.ts';
import type { GuideKind } from '../kinds/guide-kinds.ts';
import { guideKindOf } from '../kinds/guides.ts';

/** One line of the order; src/words names it. */
type OrderLine = OrderPart & { count: number; spare: number };
export type OrderPart =
  /** As the builder names it. */
  | { part: 'blank'; name: string | undefined }
  /** Without a tube size the tip is to be measured first. */
  | { part: 'tip-top'; size64?: number; half?: 'below' | 'above' }
  | { part: 'guide'; kind: GuideKind; size: string }
  | { part: 'grip'; shape: string | undefined }
  | { part: 'thread'; name: string; lengthM: number }
  | { part: 'finish'; ml: number | undefined }
  | { part: 'seat' | 'check' | 'keeper' | 'bag' };
interface ToOrder {
  /** As the builder names it. */
  blank: string | undefined;
  guides: readonly { kind: GuideKind; size: string }[];
  tipOutsideM: number | undefined;
  threads: readonly { name: string; metres: number; spools: number }[];
  finishMl?: number;
  gripShape?: string;
}

export function orderList(of: ToOrder): OrderLine[] {
  const one = { count: 1, spare: 0 };
  return [
    { part: 'blank', name: of.blank, ...one },
    ...tipTops(of.tipOutsideM),
    ...runningGuides(of.guides),
    { part: 'seat', ...one },
    { part: 'grip', shape: of.gripShape, ...one },
    { part: 'check', ...one },
    { part: 'keeper', ...one },
    ...of.threads.map(
      ({ name, metres, spools }): OrderLine => ({
        part: 'thread',
        name,
        lengthM: metres,
        count: spools,
        spare: 0,
      }),
    ),
    { part: 'finish', ml: of.finishMl && Math.ceil(2.5 * of.finishMl), ...one },
    { part: 'bag', ...one },
  ];
}

function tipTops(outsideM: number | undefined): OrderLine[] {
  if (outsideM === undefined) return [{ part: 'tip-top', count: 1, spare: 2 }];
  const { best, neighbours } = chooseTipTube(outsideM);
  return [
    { part: 'tip-top', size64: best.size64, count: 1, spare: 0 },
    ...neighbours.map(
      ({ size64 }, i): OrderLine => ({
        part: 'tip-top',
        size64,
        half: i === 0 ? 'below' : 'above',
        count: 0,
        spare: 1,
      }),
    ),
  ];
}

function runningGuides(guides: ToOrder['guides']): OrderLine[] {
  const counted = new Map<string, { kind: GuideKind; size: string; count: number }>();
  for (const { kind, size } of guides) {
    const key = `${kind} ${size}`;
    counted.set(key, { kind, size, count: (counted.get(key)?.count ?? 0) + 1 });
  }
  return [...counted.values()].map((guide) => ({
    part: 'guide',
    ...guide,
    spare: guideKindOf(guide.kind).single ? 0 : guide.count >= 4 ? 2 : 1,
  }));
}
