/**
 * From the edge that was read to the axis.
 *
 * The surface stands r = OD/2 from the axis along the normal. A drop is taken square to the nominal line, so the
 * surface is off the axis by r·cos θ, θ the blank's slope against that line: an upper edge reads too small a
 * drop, a lower edge too large a one. sin θ = −d(drop)/ds, exact for an inextensible axis; ds between neighbouring
 * readings is coarse, but where the slope is large the blank is thin.
 */
import type { ClampSetup, Reading } from './bench.ts';
import { type DiameterRow, diameterAt } from './diameter-profile.ts';

/** The readings of one test as drops of the axis, in the order given. */
export function axisDrops(setup: ClampSetup, readings: readonly Reading[], profile: readonly DiameterRow[]) {
  const sign = { axis: 0, upper: 1, lower: -1 }[setup.edge];
  return readings.map((reading) => {
    const radiusM = (diameterAt(profile, reading.fromTipM) ?? 0) / 2;
    const offset = sign * radiusM * cosSlope(reading, readings, setup.clampFromTipM);
    return { fromTipM: reading.fromTipM, dropM: reading.dropM + offset };
  });
}

function cosSlope(reading: Reading, readings: readonly Reading[], clampFromTipM: number): number {
  const clamp = { fromTipM: clampFromTipM, dropM: 0 };
  const inOrder = [...readings, clamp].sort((a, b) => a.fromTipM - b.fromTipM);
  const place = inOrder.findIndex((row) => row.fromTipM === reading.fromTipM);
  const [a, b] = [inOrder[Math.max(0, place - 1)], inOrder[Math.min(inOrder.length - 1, place + 1)]];
  const lengthM = b.fromTipM - a.fromTipM;
  const sine = lengthM > 0 ? Math.min(1, Math.abs(a.dropM - b.dropM) / lengthM) : 0;
  return Math.sqrt(1 - sine * sine);
}
