import type { LoadReading } from '../layout/ladder.ts';
import { quantile, type Spread, spreadOf } from './spread.ts';

/** Where the tip comes to stand under one load; frame as in the bend: from the front of the grip, out and up. */
export interface TipSureness {
  outM: Spread;
  upM: Spread;
  /** 95 of 100 tips lie within this distance of their middle. */
  plusMinusM: number;
}

/** The same load on many blanks; at least one. */
export function tipSureness(loads: readonly Pick<LoadReading, 'xM' | 'yM'>[]): TipSureness {
  const out = loads.map(({ xM }) => xM[0]);
  const up = loads.map(({ yM }) => yM[0]);
  const [midOut, midUp] = [median(out), median(up)];
  const away = out.map((x, i) => Math.hypot(x - midOut, up[i] - midUp)).sort((a, b) => a - b);
  return { outM: spreadOf(out), upM: spreadOf(up), plusMinusM: quantile(away, 0.95) };
}

function median(values: readonly number[]): number {
  return quantile(
    [...values].sort((a, b) => a - b),
    0.5,
  );
}
