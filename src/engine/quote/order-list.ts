/**
 * What to order for a rod, with spares: tip-tops half a size below and above, since plating narrows tubes; one
 * running guide more of each size, two where the rod takes four or more; one and a half times the thread, two and a
 * half times the finish. Common practice, no source; the builder changes any of it.
 */
import { chooseTipTube } from '../handle/tip-tube.ts';
import type { GuideKind } from '../kinds/guide-kinds.ts';
import { guideInWords, guideKindOf } from '../kinds/guides.ts';

export interface OrderLine {
  what: string;
  count: number;
  spare: number;
}
export interface ToOrder {
  /** As the builder names it. */
  blank: string;
  guides: readonly { kind: GuideKind; size: string }[];
  tipOutsideM: number | undefined;
  threads: readonly { name: string; metres: number; spools: number }[];
  finishMl?: number;
  gripShape?: string;
}

export function orderList({
  blank,
  guides,
  tipOutsideM,
  threads,
  finishMl,
  gripShape,
}: ToOrder): OrderLine[] {
  return [
    { what: blank, count: 1, spare: 0 },
    ...tipTops(tipOutsideM),
    ...runningGuides(guides),
    { what: 'Reel seat', count: 1, spare: 0 },
    { what: gripShape ? `Grip, ${gripShape}` : 'Grip', count: 1, spare: 0 },
    { what: 'Winding check', count: 1, spare: 0 },
    { what: 'Hook keeper', count: 1, spare: 0 },
    ...threads.map(({ name, metres, spools }) => ({
      what: `Thread ${name}, ${metres.toFixed(1)} m needed`,
      count: spools,
      spare: 0,
    })),
    {
      what: finishMl ? `Thread finish, ${Math.ceil(2.5 * finishMl)} ml` : 'Thread finish',
      count: 1,
      spare: 0,
    },
    { what: 'Rod bag and tube', count: 1, spare: 0 },
  ];
}

function tipTops(outsideM: number | undefined): OrderLine[] {
  if (outsideM === undefined)
    return [{ what: 'Tip-top, three sizes: measure the tip first', count: 1, spare: 2 }];
  const { best, neighbours } = chooseTipTube(outsideM);
  const named = (size64: number, why: string) => `Tip-top, tube ${sizeText(size64)}/64 in${why}`;
  return [
    { what: named(best.size64, ''), count: 1, spare: 0 },
    ...neighbours.map(({ size64 }, i) => ({
      what: named(size64, i === 0 ? ', half a size below' : ', half a size above'),
      count: 0,
      spare: 1,
    })),
  ];
}

function sizeText(size64: number): string {
  return Number.isInteger(size64) ? `${size64}` : `${Math.floor(size64)}.5`;
}

function runningGuides(guides: ToOrder['guides']): OrderLine[] {
  const counted = new Map<string, { count: number; kind: GuideKind }>();
  for (const { kind, size } of guides) {
    const name = `${capital(guideInWords(kind))}${size ? ` ${size}` : ''}`;
    counted.set(name, { kind, count: (counted.get(name)?.count ?? 0) + 1 });
  }
  return [...counted].map(([what, { count, kind }]) => ({
    what,
    count,
    spare: guideKindOf(kind).single ? 0 : count >= 4 ? 2 : 1,
  }));
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
