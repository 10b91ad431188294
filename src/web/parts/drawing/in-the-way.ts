/** What a lens must leave free: the rod, its line, reel, handle and weight, and every figure. */
import type { BendView } from './bend-view.ts';
import { alongButt, hangM, reelRadiusM } from './bent-rod-shapes.ts';
import type { DrawingFrame } from './drawing-frame.ts';
import type { Spot } from './lens-place.ts';
import { onScreen } from './line-fans.ts';

export function inTheWay(svg: SVGSVGElement, view: BendView, frame: DrawingFrame): Spot[] {
  const { rod } = view;
  const { xM, yM, rings } = view.loads[view.drawn];
  const blank = Array.from(xM, (x, i) => ({ xM: x, yM: yM[i] }));
  const reel = alongButt(rod, rod.reel.alongM, rod.reel.offsetM + reelRadiusM);
  const [tip, last] = [rings[0], rings[rings.length - 1]];
  const straight = [
    [last, reel],
    [{ xM: 0, yM: 0 }, alongButt(rod, -rod.handleM, 0)],
    [tip, { xM: tip.xM, yM: tip.yM - hangM }],
  ].flatMap(([a, b]) => shares.map((t) => ({ xM: a.xM + t * (b.xM - a.xM), yM: a.yM + t * (b.yM - a.yM) })));
  return [...[...blank, ...straight].map((place) => onScreen(place, frame)), ...figuresOf(svg)];
}
const shares = Array.from({ length: 11 }, (_, i) => i / 10);

/** Both ends and the middle of every text that stands outside of a lens. */
function figuresOf(svg: SVGSVGElement): Spot[] {
  return [...svg.querySelectorAll('text:not(.lens text)')]
    .filter(({ textContent }) => textContent !== '')
    .flatMap((text) => {
      const [x, y] = [Number(text.getAttribute('x')), Number(text.getAttribute('y')) - 5];
      const from = { start: 0, end: -48 }[text.getAttribute('text-anchor') ?? ''] ?? -24;
      return [from, from + 24, from + 48].map((off) => ({ x: x + off, y }));
    });
}
