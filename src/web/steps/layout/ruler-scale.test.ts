import { describe, expect, it } from 'vitest';
import { rulerScale, rulerTicks } from './ruler-scale.ts';

describe('the ruler', () => {
  it('finds a station again from its place on the screen', () => {
    const scale = rulerScale(1200, 2.7432);
    for (const station of [0, 0.1143, 1.7, 2.7432])
      expect(scale.fromTipM(scale.xPx(station))).toBeCloseTo(station, 12);
  });
  it('numbers whole feet in inches, whatever the width', () => {
    for (const width of [390, 820, 1440]) {
      const labels = rulerTicks(rulerScale(width, 2.7432), 'inch').flatMap(({ label }) => label ?? []);
      const step = Number(labels[1]);
      expect(step % 6).toBe(0);
      expect(labels).toEqual(labels.map((_, i) => String(i * step)));
    }
  });
  it('puts every numbered tick where its number says', () => {
    for (const { fromTipM, label } of rulerTicks(rulerScale(820, 3.3), 'mm'))
      if (label) expect(fromTipM).toBeCloseTo(Number(label) / 1000, 9);
    for (const { fromTipM, label } of rulerTicks(rulerScale(820, 3.3), 'inch'))
      if (label) expect(fromTipM).toBeCloseTo(Number(label) * 0.0254, 9);
  });
  it('never crowds its ticks', () => {
    for (const system of ['inch', 'mm'] as const) {
      const scale = rulerScale(390, 3.4);
      const [a, b] = rulerTicks(scale, system);
      expect(scale.xPx(b.fromTipM) - scale.xPx(a.fromTipM)).toBeGreaterThan(4);
    }
  });
});
