/** The nodes of the ruler's drawing, and the shapes that are laid once for a rod. */

import type { Zone } from '../../../engine/layout/guide-moves.ts';
import { NodePool, setAll, svgNode } from '../../parts/drawing/svg-nodes.ts';
import type { RulerModel } from './ruler-model.ts';
import type { RulerScale } from './ruler-scale.ts';

/** Heights of the ruler's parts, from the top, in CSS px. */
export const rulerY = {
  numbers: [28, 14],
  interval: 34,
  slack: 41,
  mark: 33,
  rod: 60,
  start: 82,
  ticks: 94,
  tickText: 118,
};
export const rulerHeightPx = 140;

/** Half the width of the place where a finger takes hold of a mark, where its neighbours leave that much. */
export const reachPx = 22;

export type GuideNodes = ReturnType<typeof makeGuide>;

export function makeParts(svg: SVGSVGElement) {
  svg.replaceChildren();
  const defs = svgNode(svg, 'defs');
  const hatch = svgNode(defs, 'pattern', {
    id: 'ruler-hatch',
    width: 6,
    height: 6,
    patternUnits: 'userSpaceOnUse',
    patternTransform: 'rotate(45)',
  });
  svgNode(hatch, 'path', { class: 'ruler-hatch', d: 'M0 0V6' });
  const group = (name: string) => svgNode(svg, 'g', { class: name });
  return {
    keepOut: new NodePool(group('ruler-keep-out'), 'rect'),
    slack: new NodePool(group('ruler-slack'), 'rect', { rx: 1 }),
    grip: svgNode(svg, 'path', { class: 'ruler-grip' }),
    blank: svgNode(svg, 'path', { class: 'ruler-blank' }),
    ferrules: new NodePool(group('ruler-ferrules'), 'rect'),
    starts: new NodePool(group('ruler-starts'), 'circle', { r: 4 }),
    ticks: svgNode(svg, 'path', { class: 'ruler-ticks' }),
    tickNames: new NodePool(group('ruler-tick-names'), 'text'),
    sections: new NodePool(group('ruler-sections'), 'text', { 'text-anchor': 'middle' }),
    intervals: new NodePool(group('ruler-intervals'), 'text', {
      'text-anchor': 'middle',
      y: rulerY.interval,
    }),
    guides: group('ruler-guides'),
  };
}

export function makeGuide(parent: Element, guide: number) {
  const group = svgNode(parent, 'g', {
    role: 'slider',
    tabindex: 0,
    'data-guide': guide,
    'aria-keyshortcuts': 'p',
  });
  return {
    group,
    focus: svgNode(group, 'rect', { class: 'ruler-focus', y: 4, height: 74, rx: 2 }),
    hit: svgNode(group, 'rect', { class: 'ruler-hit', y: 0, height: rulerHeightPx - 48 }),
    mark: svgNode(group, 'path', { class: 'ruler-mark' }),
    pin: svgNode(group, 'path', { class: 'ruler-pin', d: 'M0 0l4 6h-8z' }),
    number: (() => {
      const text = svgNode(group, 'text', { class: 'ruler-number', 'text-anchor': 'middle' });
      text.textContent = String(guide + 1);
      return text;
    })(),
  };
}

/** Numbers stand in one row; where two would touch, the second one moves up. */
export function numberRows(xPx: readonly number[]): number[] {
  const lastIn = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return xPx.map((x, guide) => {
    const widthPx = guide + 1 > 9 ? 19 : 11;
    const row = x - lastIn[0] >= widthPx ? 0 : 1;
    lastIn[row] = x;
    return row;
  });
}

export function placeZones(
  pool: NodePool<'rect'>,
  zones: readonly Zone[],
  scale: RulerScale,
  box: { y: number; height: number },
): void {
  const rects = pool.take(zones.length);
  zones.forEach(({ fromTipM, toTipM }, i) => {
    const x = scale.xPx(fromTipM);
    setAll(rects[i], { x, width: Math.max(1, scale.xPx(toTipM) - x), ...box });
  });
}

/** Thickness drawn five to ten times too large against the length, so that the taper can be seen. */
export function blankOutline({ diameters, gripFromTipM }: RulerModel, scale: RulerScale): string {
  const shown = diameters.filter(({ fromTipM }) => fromTipM < gripFromTipM);
  const last = shown.at(-1) ?? { outsideM: 0.004 };
  const rows = [
    { fromTipM: 0, outsideM: shown[0]?.outsideM ?? 0.002 },
    ...shown,
    { fromTipM: gripFromTipM, outsideM: last.outsideM },
  ];
  const half = (outsideM: number) => 0.6 + outsideM * 260;
  const up = rows.map(
    (row) => `${scale.xPx(row.fromTipM).toFixed(1)} ${(rulerY.rod - half(row.outsideM)).toFixed(1)}`,
  );
  const down = rows
    .map((row) => `${scale.xPx(row.fromTipM).toFixed(1)} ${(rulerY.rod + half(row.outsideM)).toFixed(1)}`)
    .reverse();
  return `M${[...up, ...down].join('L')}Z`;
}
