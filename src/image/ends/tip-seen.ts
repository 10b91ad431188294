/**
 * Where along its line a thin blank stops being seen. Each row's contrast to the wall beside it, over the blank's own just
 * before: r from -1, nothing there, to 1, the blank. A tip at t has Σ r before it and -Σ r after it for itself, so that
 * 2 Σ r to t tells one place from another. Where something lies across the blank, before a shelf of its own colour, or where
 * a wrap or a cord makes it fainter, rows tell nothing, and a tip among them is known by the blank's length alone.
 */
import { medianOf } from '../../engine/numerics/median.ts';
import { type Strip, stripMean } from '../trace/strip.ts';

export interface TipSeenChoice {
  /** In pixels of the reduced picture, off the line. */
  insidePx: number;
  besidePx: readonly [number, number];
  /** The wall beside may differ by this share of the blank's contrast, or so many times its usual grain. */
  wallShare: number;
  wallGrain: number;
  /** What crosses the blank is seen on both sides of it, so far along at most. */
  aroundPx: number;
  /** Rows before the first possible tip that tell the blank's own contrast. */
  ownPx: number;
  /** Contrast, as a share of what the blank should have there, that speaks for it, and for nothing there; between, neither. */
  seenShare: number;
  noneShare: number;
  /** Before a wall where it should have less than this share of its own contrast a row tells nothing. */
  leastShare: number;
  /** A blank is looked for so far beyond its tip; there it differs from what lies so far off it on either side. */
  beyondPx: number;
  flankPx: readonly [number, number];
}

/** Judgement, from painted pictures: seeds 30000 to 30039, failures of 32000 to 32049 and 33000 to 33049. */
export const tipSeenChoice: TipSeenChoice = {
  insidePx: 1,
  besidePx: [3, 6],
  wallShare: 0.6,
  wallGrain: 6,
  aroundPx: 8,
  ownPx: 30,
  seenShare: 0.6,
  noneShare: 0.3,
  leastShare: 0.5,
  beyondPx: 12,
  flankPx: [2.5, 4],
};

export interface TipSeen {
  /** Per row -1 to 1. */
  speaks: Float64Array;
  /** Whether a line as clear as the blank goes on from this row, beside the straight way too. */
  goesOn(row: number): boolean;
}

/** `first` is the first row where the tip may be. Undefined where no blank stands out before it. */
export function tipSeen(
  strip: Strip,
  first: number,
  factor: number,
  choice = tipSeenChoice,
): TipSeen | undefined {
  const [near, far] = choice.besidePx;
  const rows = Array.from({ length: strip.rows }, (_, u) => u);
  const inside = rows.map((u) => stripMean(strip, u, -choice.insidePx * factor, choice.insidePx * factor));
  const sides = [-1, 1].map((side) => {
    const ends = [side * near * factor, side * far * factor].sort((a, b) => a - b);
    const seen = rows.map((u) => stripMean(strip, u, ends[0], ends[1]));
    const wall = rows.map((u) => around(seen, u, factor));
    return { wall, off: seen.map((value, u) => Math.abs(value - wall[u])) };
  });
  const contrast = inside.map((value, u) => value - 0.5 * (sides[0].wall[u] + sides[1].wall[u]));
  const from = Math.max(0, first - Math.round(choice.ownPx * factor));
  const own = medianOf(contrast.slice(from, first));
  const grain = medianOf(contrast.slice(from, first).map((value) => Math.abs(value - own)));
  if (Math.abs(own) < Math.max(1.5, grain)) return undefined;
  const crossed = sides.map(({ off }) => {
    const most = Math.max(choice.wallShare * Math.abs(own), choice.wallGrain * medianOf(off));
    return off.map((value) => value > most);
  });
  const reach = Math.round(choice.aroundPx * factor);
  const isCrossed = (u: number) =>
    crossed.every((side) => side.slice(Math.max(0, u - reach), u + reach + 1).includes(true));
  const wall = rows.map((u) => 0.5 * (sides[0].wall[u] + sides[1].wall[u]));
  const bright = own + medianOf(wall.slice(from, first));
  const speaks = Float64Array.from(contrast, (value, u) => {
    const should = bright - wall[u];
    const tells = Math.abs(should) >= choice.leastShare * Math.abs(own) && !isCrossed(u);
    return tells ? speaksFor(value / should, choice) : 0;
  });
  // a line differs from both its sides, the edge of a sheet or a shelf from one
  const clearAt = (u: number, off: number) => {
    const mean = (a: number, b: number) => stripMean(strip, u, off + a * factor, off + b * factor);
    const middle = mean(-choice.insidePx, choice.insidePx);
    const [from, to] = choice.flankPx;
    const besides = [mean(-to, -from), mean(from, to), wall[u]];
    return Math.min(...besides.map((beside) => (middle - beside) / own));
  };
  const goesOn = (row: number) => {
    const beyond = rows.slice(row + 1, row + 1 + Math.round(choice.beyondPx * factor));
    const clear = beyond.filter((u) => {
      const most = Math.min(far - choice.insidePx, 1 + 0.4 * ((u - row) / factor)) * factor;
      for (let off = -most; off <= most; off += 0.5) if (clearAt(u, off) > choice.seenShare) return true;
      return false;
    });
    return clear.length > 0.75 * beyond.length;
  };
  return { speaks, goesOn };
}

function speaksFor(share: number, { seenShare, noneShare }: TipSeenChoice): number {
  if (share > seenShare) return Math.min(1, (share - seenShare) / (1 - seenShare));
  return Math.min(0, Math.abs(share) / noneShare - 1);
}

/** The wall's usual brightness thereabouts. */
function around(values: readonly number[], u: number, factor: number): number {
  const reach = Math.round(20 * factor);
  return medianOf(values.slice(Math.max(0, u - reach), u + reach + 1));
}
