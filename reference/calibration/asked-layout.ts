/** What every simulated build asks: a fly rod's guides, loads after the true blank's power, the arithmetic rule to start. */
import { type BlankTables, freeRod } from '../../src/engine/bench/free-rod.ts';
import type { LadderRequest } from '../../src/engine/layout/ladder-request.ts';
import { arithmeticRule, defaultLadder, defaultLimits } from '../../src/engine/layout/layout-defaults.ts';
import type { LayoutRequest } from '../../src/engine/layout/layout-request.ts';
import { standardGravity } from '../../src/engine/units/gravity.ts';
import type { TrueBlank } from '../../test/support/simulated-bench.ts';

export const gripM = 0.3;
const inchM = 0.0254;

export function trueTables({ lengthM, stiffnessNm2, kgPerM }: TrueBlank): BlankTables {
  const at = Array.from({ length: 301 }, (_, i) => (lengthM * i) / 300);
  return {
    stiffness: at.map((fromTipM) => ({ fromTipM, EINm2: stiffnessNm2(fromTipM) })),
    massPerLength: at.map((fromTipM) => ({ fromTipM, kgPerM: kgPerM(fromTipM) })),
  };
}

/** On the true rod. */
export function askedLayout(
  blank: TrueBlank,
): LayoutRequest & LadderRequest & { start: { fromTipM: number[] } } {
  const { lengthM, ferrules } = blank;
  const rod = freeRod(trueTables(blank), lengthM - gripM);
  const ladder = defaultLadder(rod);
  if (!ladder) throw new Error('the simulated blank has no ladder');
  const count = Math.round(lengthM / (12 * inchM));
  const keepOut = ferrules.map(({ fromTipM, toTipM }) => ({
    fromTipM: fromTipM - 0.75 * inchM,
    toTipM: toTipM + 0.75 * inchM,
  }));
  const firstFromTipM = round(0.0425 * lengthM, 1e-3);
  const wanted = round(lengthM - 30 * inchM, 1e-3);
  const taken = keepOut.find((zone) => wanted > zone.fromTipM && wanted < zone.toTipM);
  const strippingFromTipM = taken ? taken.fromTipM - 0.002 : wanted;
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    reel: { alongM: -0.1, offsetM: 0.05 },
    guides: {
      count,
      ringHeightsM: Array.from({ length: count }, (_, i) => 0.005 + 0.009 * (i / (count - 1)) ** 2),
      massesKg: Array.from({ length: count }, () => 4e-4),
      side: 'under',
    },
    tipTop: { ringHeightM: 0.004, massKg: 4e-4 },
    keepOut,
    ladder: ladder.map((load) => ({ ...load, tensionN: handy(load.tensionN) })),
    limits: defaultLimits(rod.lengthM),
    firstFromTipM,
    strippingFromTipM,
    start: { fromTipM: arithmeticRule(firstFromTipM, strippingFromTipM, count) },
  };
}

/** To 5 g. */
function handy(tensionN: number): number {
  return standardGravity * 0.005 * Math.max(1, Math.round(tensionN / standardGravity / 0.005));
}

function round(value: number, step: number): number {
  return Math.round(value / step) * step;
}
