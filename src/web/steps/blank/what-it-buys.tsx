import { boughtByNext, boughtInWords } from '../../../words/next-reading.ts';
import { Figure } from '../../fields/figure.tsx';
import { useShop } from '../../read/shop.tsx';
import type { NextReadingState } from './use-next-reading.ts';

const bar = { width: 240, height: 14 };

/** How well the marks are known by now, and what the next readings would buy: one line over one bar. */
export function WhatItBuys({ next: { answer, missing, failure } }: { next: NextReadingState }) {
  const { writer } = useShop();
  const bought = !missing && !failure && answer ? boughtByNext(answer) : undefined;
  if (!bought) return null;
  const share = (lengthM: number) => (bar.width * Math.min(lengthM, bought.nowM)) / bought.nowM;
  return (
    <div className="what-it-buys screen-only" role="status">
      <p>
        <Figure text={boughtInWords(bought, writer)} />
      </p>
      <svg viewBox={`0 0 ${bar.width} ${bar.height}`} width={bar.width} aria-hidden="true">
        <rect y={3} width={bar.width} height={8} className="bought-now" />
        <rect y={3} width={share(bought.thenM)} height={8} className="bought-then" />
        <path d={`M${share(bought.slackM)} 0v${bar.height}`} className="bought-slack" />
      </svg>
    </div>
  );
}
