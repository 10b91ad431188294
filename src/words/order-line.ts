import { guideInWords } from '../engine/kinds/guides.ts';
import type { OrderPart } from '../engine/quote/order-list.ts';
import { capital } from './capital.ts';
import type { Writer } from './writer.ts';

const plain = {
  seat: 'Reel seat',
  check: 'Winding check',
  keeper: 'Hook keeper',
  bag: 'Rod bag and tube',
} as const;

/** What to ask the dealer for: `Snake guide 2`, `Tip-top, tube 4/64 in`, `Thread green, 34 yd needed`. */
export function orderedInWords(of: OrderPart, w: Writer): string {
  switch (of.part) {
    case 'blank':
      return of.name ?? 'Blank';
    case 'tip-top':
      return tipTopInWords(of);
    case 'guide':
      return `${capital(guideInWords(of.kind))}${of.size ? ` ${of.size}` : ''}`;
    case 'grip':
      return of.shape ? `Grip, ${of.shape}` : 'Grip';
    case 'thread':
      return `Thread ${of.name}, ${w.run(of.lengthM)} needed`;
    case 'finish':
      return of.ml ? `Thread finish, ${w.volume(of.ml)}` : 'Thread finish';
    default:
      return plain[of.part];
  }
}

function tipTopInWords({ size64, half }: Extract<OrderPart, { part: 'tip-top' }>): string {
  if (size64 === undefined) return 'Tip-top, three sizes: measure the tip first';
  const size = Number.isInteger(size64) ? `${size64}` : `${Math.floor(size64)}.5`;
  return `Tip-top, tube ${size}/64 in${half ? `, half a size ${half}` : ''}`;
}
