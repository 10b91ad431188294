/**
 * The number of a mark, from the grey levels at its cells.
 *
 * Each cell is judged against what must be black (the ring) and white (inside the teeth, and the paper beyond) on
 * its own ray, so that light may fall off across the mark. A cell that lies in between, or whose ray shows no
 * contrast, is unclear. One wrong cell, or up to three unclear ones, are forgiven; see wall-mark.ts for the words.
 */
import {
  wallMarkCells,
  wallMarkNumbers,
  wallMarkPose,
  wallMarkRadii,
  wallMarkTeeth,
} from '../../engine/wall-mark/wall-mark.ts';
import { type GreyImage, greyAt } from '../pixels.ts';

/** Picture place = middle + columns·(u, v) of the mark's frame; v points up in the mark, y down in the picture. */
export interface MarkFrame {
  x: number;
  y: number;
  /** Row-major 2 × 2. */
  columns: [number, number, number, number];
}

export interface MarkReading {
  number: number;
  halfTurn: boolean;
  mirrored: boolean;
  wrong: number;
  unclear: number;
  /** 0..1: how far the cells lie from doubt. */
  clearness: number;
}

interface CellRules {
  /** Doubt: this near to half way between black and white. */
  doubt: number;
  /** Least difference of black and white on a ray, as a share of the median of all rays. */
  leastContrastShare: number;
  mostWrong: number;
  mostUnclear: number;
}

const cellRules: CellRules = { doubt: 0.14, leastContrastShare: 0.3, mostWrong: 1, mostUnclear: 3 };

export function readCells(image: GreyImage, frame: MarkFrame, rules = cellRules): MarkReading | undefined {
  const cells = Array.from({ length: wallMarkCells }, (_, k) => cellAt(image, frame, k));
  const contrast = cells.map((cell) => cell.contrast).sort((a, b) => a - b)[wallMarkCells >> 1];
  if (contrast < 12) return undefined;
  const shades = cells.map((cell) =>
    cell.contrast < rules.leastContrastShare * contrast ? 0.5 : cell.shade,
  );
  const isUnclear = (shade: number): boolean =>
    Math.abs(shade - 0.5) < rules.doubt || shade < -0.6 || shade > 1.6;
  const unclear = shades.filter(isUnclear).length;
  if (unclear > rules.mostUnclear) return undefined;
  let best: MarkReading | undefined;
  for (const number of wallMarkNumbers) {
    for (const halfTurn of [false, true]) {
      for (const mirrored of [false, true]) {
        const teeth = wallMarkPose(wallMarkTeeth(number), { halfTurn, mirrored });
        const wrong = shades.filter((shade, k) => !isUnclear(shade) && shade < 0.5 !== teeth[k]).length;
        if (best && wrong >= best.wrong) continue;
        best = { number, halfTurn, mirrored, wrong, unclear, clearness: clearnessOf(shades) };
      }
    }
  }
  const ok =
    best !== undefined && best.wrong <= rules.mostWrong && 2 * best.wrong + unclear <= rules.mostUnclear;
  return ok ? best : undefined;
}

interface Cell {
  /** 0 black, 1 white. */
  shade: number;
  contrast: number;
}

/** Means over the middle part of a cell, at the tooth's radii, in the ring, and on both sides of it. */
function cellAt(image: GreyImage, frame: MarkFrame, k: number): Cell {
  const { fish, tooth, rim, outer, paper } = wallMarkRadii;
  const mean = (from: number, to: number): number => {
    let sum = 0;
    for (const share of [0.3, 0.5, 0.7]) {
      const angle = ((k + share) * 2 * Math.PI) / wallMarkCells;
      for (const part of [0.25, 0.5, 0.75]) sum += levelAt(image, frame, from + part * (to - from), angle);
    }
    return sum / 9;
  };
  const black = mean(rim + 0.03, outer - 0.03);
  const white = (mean(fish + 0.02, tooth - 0.02) + mean(outer + 0.05, paper - 0.05)) / 2;
  const level = mean(tooth + 0.03, rim - 0.03);
  const contrast = white - black;
  return { shade: contrast > 1 ? (level - black) / contrast : 0.5, contrast };
}

/** Grey level at a radius and an angle of the mark's frame. */
export function levelAt(image: GreyImage, frame: MarkFrame, radius: number, angle: number): number {
  const u = radius * Math.cos(angle);
  const v = radius * Math.sin(angle);
  const [a, b, c, d] = frame.columns;
  return greyAt(image, frame.x + a * u + b * v, frame.y + c * u + d * v);
}

/** Mean distance from half way, 1 where all cells are as black or white as their rays. */
function clearnessOf(shades: readonly number[]): number {
  return shades.reduce((sum, shade) => sum + Math.min(1, 2 * Math.abs(shade - 0.5)), 0) / shades.length;
}
