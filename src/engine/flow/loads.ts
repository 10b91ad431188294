import type { FreeRod } from '../bench/free-rod.ts';
import type { LadderLoad } from '../layout/ladder-request.ts';
import { defaultLadder } from '../layout/layout-defaults.ts';
import { standardGravity } from '../units/gravity.ts';
import type { Choices, LoadBy } from './choices.ts';

export interface LoadLadder {
  /** Weights, lightest first; empty where there is no default for this rod. */
  kg: readonly number[];
  /** Whether the builder gave them himself. */
  given: boolean;
  ladder: readonly LadderLoad[];
}

/** Straight down, as a hung weight pulls. */
export const downRad = -Math.PI / 2;

/** The builder's load ladder, or the default that follows the blank's power in weights a bench has. */
export function loadLadder(choices: Choices, rod: FreeRod): LoadLadder {
  const common = choices.ladderKg ? undefined : defaultLadder(rod);
  const kg =
    choices.ladderKg ?? (common ?? []).map(({ tensionN }) => handyWeight(tensionN / standardGravity));
  return {
    kg,
    given: choices.ladderKg !== undefined,
    ladder: kg.map((load) => ladderLoad(load, choices.loadBy, choices.tautLineKg)),
  };
}

/** Weight through the line, or tied to the tip with the line just taut. */
export function ladderLoad(massKg: number, loadBy: LoadBy, tautLineKg: number): LadderLoad {
  if (loadBy === 'line') return { tensionN: massKg * standardGravity, pullAngleRad: downRad };
  return { tensionN: tautLineKg * standardGravity, pullAngleRad: downRad, tiedN: massKg * standardGravity };
}

/** A weight that can be put together on a bench: nobody hangs 203.7 g. */
export function handyWeight(massKg: number): number {
  const grams = massKg * 1000;
  const step = grams < 20 ? 1 : grams < 100 ? 5 : grams < 500 ? 10 : 50;
  return (Math.max(1, Math.round(grams / step)) * step) / 1000;
}
