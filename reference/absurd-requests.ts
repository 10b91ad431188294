/**
 * Random requests out to the bounds of arithmetic that the engine's door lets through: rods from a centimetre to a
 * hundred metres, EI over eighteen powers of ten from row to row, a meganewton, a natural curvature of a millimetre's
 * radius. No builder means any of them; the engine must still give numbers or say why not.
 */
import type { BendRequest, Side } from '../src/engine/bend/bend.ts';
import { seededRandom } from '../src/engine/numerics/seeded-random.ts';

export function randomAbsurdRequest(seed: number): BendRequest {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const scale = (low: number, high: number) => Math.exp(between(Math.log(low), Math.log(high)));
  const signed = (low: number, high: number) => between(-1, 1) * scale(low, high);
  const chance = (share: number) => random() < share;
  const lengthM = scale(0.01, 100);
  const rows = Math.floor(scale(1, 50));
  const stations = Array.from({ length: rows }, (_, i) => (rows === 1 ? 0 : (lengthM * i) / (rows - 1)));
  const common = chance(0.6) ? scale(1e-6, 1e6) : undefined;
  const side: Side = chance(0.5) ? 'under' : 'over';
  const lined = chance(0.8);
  const places = [0];
  for (let k = Math.floor(scale(1, 60)); k > 1; k--) {
    places.push(places[places.length - 1] + (0.9 * lengthM * scale(0.001, 1)) / 60);
  }
  return {
    rod: {
      lengthM,
      stiffness: stations.map((fromTipM) => ({
        fromTipM,
        EINm2: common ? common * scale(0.1, 10) : scale(1e-9, 1e9),
      })),
      massPerLength: stations.map((fromTipM) => ({ fromTipM, kgPerM: chance(0.3) ? 0 : scale(1e-6, 1e4) })),
      restCurvature: chance(0.3) ? [{ fromTipM: 0, perM: signed(1e-3, 1000) }] : undefined,
    },
    buttAngleRad: between(-100, 100),
    masses: Array.from({ length: Math.floor(scale(1, 5)) - 1 }, () => ({
      fromTipM: between(0, lengthM),
      massKg: scale(1e-6, 1e4),
    })),
    guides: lined
      ? places.map((fromTipM) => ({ fromTipM, ringHeightM: chance(0.1) ? 0 : scale(1e-4, 1), side }))
      : [],
    reel: { alongM: signed(0.01, 100), offsetM: between(-10, 10) },
    load: {
      ...(lined
        ? { line: { tensionN: chance(0.1) ? 0 : scale(1e-6, 1e6), pullAngleRad: between(-100, 100) } }
        : {}),
      ...(chance(0.4) || !lined ? { tip: { xN: signed(1e-6, 1e6), yN: signed(1e-6, 1e6) } } : {}),
    },
    ...(lined && chance(0.2)
      ? { friction: { coefficient: random(), direction: chance(0.5) ? 'in' : 'out' } }
      : {}),
    ...(lined && chance(0.2)
      ? { contact: { diameters: [{ fromTipM: 0, outsideM: scale(1e-4, 0.1) }] } }
      : {}),
  };
}
