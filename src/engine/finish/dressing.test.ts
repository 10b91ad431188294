import { expect, test } from 'vitest';
import type { Wrap } from '../wraps/plan-wraps.ts';
import { dressingMaterial, dressWraps, withBondedFootNm2 } from './dressing.ts';

const wrap: Wrap = {
  kind: 'foot',
  id: 'foot/1/tip',
  fromTipM: 0.1,
  toTipM: 0.112,
  path: '',
  overFoot: true,
  trimmed: false,
  guide: 0,
  section: 0,
  startFromOwnTipM: 0.1,
  endFromOwnTipM: 0.112,
  startFromOwnButtM: 0.5,
  endFromOwnButtM: 0.488,
  outsideM: 0.002,
  turns: 78,
  trimTurns: 0,
  trimEndM: 0,
  threadM: 0.53,
  trimThreadM: 0,
  underwrapM: 0,
  underThreadM: 0,
};
const choices = { laidWidthM: 0.000154, coatThicknessM: 0.00025, coats: 2 };

/** A thin ring of fibres and a flat foot on top, bent together: the section that its own forces leave straight. */
function sectionByFibres(blankNm2: number, outsideM: number, heightM: number): number {
  const { steelPa, footWidthM } = dressingMaterial;
  const r = outsideM / 2;
  const fibres: { yM: number; forceN: number }[] = [];
  const ring = 4000;
  for (let k = 0; k < ring; k++) {
    const angle = (2 * Math.PI * (k + 0.5)) / ring;
    // E A of the ring from its E I = E A r²/2
    fibres.push({ yM: r * Math.sin(angle), forceN: (2 * blankNm2) / r ** 2 / ring });
  }
  const layers = 4000;
  for (let k = 0; k < layers; k++) {
    const yM = r + (heightM * (k + 0.5)) / layers;
    fibres.push({ yM, forceN: (steelPa * footWidthM * heightM) / layers });
  }
  const axis =
    fibres.reduce((sum, { yM, forceN }) => sum + yM * forceN, 0) /
    fibres.reduce((sum, { forceN }) => sum + forceN, 0);
  return fibres.reduce((sum, { yM, forceN }) => sum + forceN * (yM - axis) ** 2, 0);
}

test.each([
  [0.05, 0.0018],
  [1.2, 0.005],
  [20, 0.009],
])('a bonded foot on a blank of %d N·m² and %d m bends as its fibres do', (blankNm2, outsideM) => {
  const byFibres = sectionByFibres(blankNm2, outsideM, 0.0008);
  expect(withBondedFootNm2(blankNm2, outsideM) / byFibres).toBeCloseTo(1, 5);
});

test('a foot matters most where the blank is thin', () => {
  const gain = (blankNm2: number, outsideM: number) => withBondedFootNm2(blankNm2, outsideM) / blankNm2;
  expect(gain(0.05, 0.0018)).toBeGreaterThan(2);
  expect(gain(20, 0.009)).toBeLessThan(1.6);
});

test('thread weighs as its volume of nylon, finish grows with every coat', () => {
  const [bare] = dressWraps([wrap], { ...choices, coats: 0 });
  const volumeM3 = 0.53 * (Math.PI / 4) * 0.000154 ** 2;
  expect(bare.threadKg).toBeCloseTo(volumeM3 * 1140 * 0.7, 12);
  expect(bare.finishKg).toBe(0);
  const snake = { ...wrap, outsideM: 0.004 };
  const coats = [1, 2, 3].map((count) => dressWraps([snake], { ...choices, coats: count })[0]);
  // 0.05 to 0.08 ml of the first coat on a snake's foot, a millilitre weighing 1.15 g: common practice, no source.
  expect(coats[0].finishKg / 1150).toBeGreaterThan(0.04e-6);
  expect(coats[0].finishKg / 1150).toBeLessThan(0.08e-6);
  expect(coats[2].finishKg - coats[1].finishKg).toBeCloseTo(coats[1].finishKg - coats[0].finishKg, 12);
  expect(coats[2].sleeveNm2).toBeGreaterThan(coats[1].sleeveNm2);
});
