/**
 * Swings of the bare blank counted by hand: ln of the frequency as one more datum, with its derivatives by ln EI and
 * ln µ at the rows (frequency/first-mode.ts). Small swings about the straight blank; air, the hand's give and gravity
 * are left out and stand in a ± of 0.5 % beside the count's own (a judgement, no source).
 */

import { freeRod } from '../bench/free-rod.ts';
import { rodTables } from '../bend/rod.ts';
import { firstMode } from '../frequency/first-mode.ts';
import type { Prediction } from './clamp-derivatives.ts';
import type { FitBlank } from './request.ts';
import { type PlaceInRows, placeInRows, type Rows } from './rows.ts';
import type { Unknowns } from './unknowns.ts';

export interface SwingDatum {
  clampFromTipM: number;
  /** ln(f / 1 Hz), and its standard deviation. */
  value: number;
  sigma: number;
  path: string;
}

export const swingModelShare = 0.005;

/** A stopwatch pressed by hand, over both ends: a judgement, no source. */
export const stopwatchSigmaS = 0.2;

export function swingData({ swings = [], lengthM }: FitBlank): SwingDatum[] {
  return swings.map(({ clampFromTipM = lengthM, hz, sigmaHz }, i) => ({
    clampFromTipM,
    value: Math.log(hz),
    sigma: Math.hypot(sigmaHz / hz, swingModelShare),
    path: `blank.swings[${i}]`,
  }));
}

/** Writes the datum's prediction and derivatives; false where the blank has no such swing. */
export function predictSwing(
  { clampFromTipM }: Pick<SwingDatum, 'clampFromTipM'>,
  rows: Rows,
  unknowns: Unknowns,
  z: Float64Array,
  row: number,
  out: Prediction,
): boolean {
  const { stiffness, mass } = unknowns;
  const tables = {
    stiffness: Array.from(rows.fine, (fromTipM, i) => ({
      fromTipM,
      EINm2: Math.exp(z[stiffness.start + i]),
    })),
    massPerLength: Array.from(rows.coarse, (fromTipM, i) => ({
      fromTipM,
      kgPerM: Math.exp(z[mass.start + i]),
    })),
  };
  const mode = firstMode(rodTables(freeRod(tables, clampFromTipM)));
  if (!mode || !(mode.hz > 0)) return false;
  out.value[row] = Math.log(mode.hz);
  const at = row * out.size;
  mode.fromTipM.forEach((fromTipM, point) => {
    addLog(
      out.jacobian,
      at + stiffness.start,
      z,
      stiffness.start,
      placeInRows(rows.fine, fromTipM),
      0.5 * mode.byStiffness[point],
    );
    addLog(
      out.jacobian,
      at + mass.start,
      z,
      mass.start,
      placeInRows(rows.coarse, fromTipM),
      0.5 * mode.byMass[point],
    );
  });
  return true;
}

/** Values are linear between rows: a share of ∂/∂ ln at a place goes to both rows by what each gives to it. */
function addLog(
  jacobian: Float64Array,
  start: number,
  z: Float64Array,
  zStart: number,
  { row, weight }: PlaceInRows,
  by: number,
): void {
  const low = (1 - weight) * Math.exp(z[zStart + row]);
  const high = weight * Math.exp(z[zStart + row + 1]);
  jacobian[start + row] += (by * low) / (low + high);
  jacobian[start + row + 1] += (by * high) / (low + high);
}
