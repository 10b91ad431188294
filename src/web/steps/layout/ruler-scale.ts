import type { UnitSystem } from '../../../engine/units/unit-table.ts';

/** The straight rod across the screen, tip left; the strips below share it. */
export interface RulerScale {
  widthPx: number;
  lengthM: number;
  xPx(fromTipM: number): number;
  fromTipM(xPx: number): number;
}

const marginPx = 14;

export function rulerScale(widthPx: number, lengthM: number): RulerScale {
  const pxPerM = Math.max(1, widthPx - 2 * marginPx) / lengthM;
  return {
    widthPx,
    lengthM,
    xPx: (fromTipM) => marginPx + fromTipM * pxPerM,
    fromTipM: (xPx) => (xPx - marginPx) / pxPerM,
  };
}

export interface Tick {
  fromTipM: number;
  /** 0 the shortest, 2 the longest, which carries a number. */
  rank: 0 | 1 | 2;
  label?: string;
}
interface Graduation {
  stepM: number;
  /** How many steps make a middle and a long tick. */
  middle: number;
  long: number;
  /** What one step counts. */
  counts: number;
}

const graduations: Record<UnitSystem, readonly Graduation[]> = {
  inch: [
    { stepM: 0.0254 / 2, middle: 2, long: 12, counts: 0.5 },
    { stepM: 0.0254, middle: 6, long: 12, counts: 1 },
    { stepM: 0.0254 * 2, middle: 3, long: 12, counts: 2 },
    { stepM: 0.0254 * 6, middle: 2, long: 4, counts: 6 },
  ],
  mm: [
    { stepM: 0.01, middle: 5, long: 10, counts: 10 },
    { stepM: 0.02, middle: 5, long: 10, counts: 20 },
    { stepM: 0.05, middle: 2, long: 10, counts: 50 },
    { stepM: 0.1, middle: 5, long: 10, counts: 100 },
  ],
};

/** Ticks as a tape has them, as fine as the screen can show apart. */
export function rulerTicks(scale: RulerScale, system: UnitSystem): Tick[] {
  const choices = graduations[system];
  const apart = (g: Graduation) => scale.xPx(g.stepM) - scale.xPx(0);
  const graduation = choices.find((g) => apart(g) >= 5) ?? choices[choices.length - 1];
  const { stepM, middle, long, counts } = graduation;
  const count = Math.floor(scale.lengthM / stepM + 1e-6);
  return Array.from({ length: count + 1 }, (_, i) => ({
    fromTipM: i * stepM,
    rank: i % long === 0 ? 2 : i % middle === 0 ? 1 : 0,
    ...(i % long === 0 ? { label: String(Math.round(i * counts)) } : {}),
  }));
}
