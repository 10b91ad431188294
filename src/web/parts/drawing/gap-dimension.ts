/** The gap of a span as a dimension: square on the line from its middle to the blank. */
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import type { PlacePx } from './line-fans.ts';

interface PlaceM {
  xM: number;
  yM: number;
}
export interface GapDimension {
  line: PlaceM;
  blank: PlaceM;
}

/** From the middle of the line between ring `span` and the next to the axis of the blank. */
export function gapDimension(load: RuledLoad, span: number): GapDimension {
  const [a, b] = [load.rings[span], load.rings[span + 1]];
  const line = { xM: (a.xM + b.xM) / 2, yM: (a.yM + b.yM) / 2 };
  return { line, blank: nearestOn(load, line) };
}

/** The point of the blank's axis nearest to a place. */
export function nearestOn({ xM, yM }: RuledLoad, place: PlaceM): PlaceM {
  let blank = { xM: xM[0], yM: yM[0] };
  for (let i = 1; i < xM.length; i++) {
    const foot = footOf(place, { xM: xM[i - 1], yM: yM[i - 1] }, { xM: xM[i], yM: yM[i] });
    if (apart(foot, place) < apart(blank, place)) blank = foot;
  }
  return blank;
}

/** The span in which a rule reads most; -1 without one. */
export function widestGap({ ruled }: RuledLoad): number {
  return ruled.reduce(
    (widest, { ruleGapM }, span) => (ruleGapM > (ruled[widest]?.ruleGapM ?? 0) ? span : widest),
    -1,
  );
}

/** A dimension line with a stroke square on it at either end. */
export function dimensionPath(a: PlacePx, b: PlacePx, stroke: number): string {
  const way = Math.atan2(b.y - a.y, b.x - a.x);
  const [sx, sy] = [(-Math.sin(way) * stroke) / 2, (Math.cos(way) * stroke) / 2];
  const end = ({ x, y }: PlacePx) =>
    `M${(x - sx).toFixed(1)} ${(y - sy).toFixed(1)}L${(x + sx).toFixed(1)} ${(y + sy).toFixed(1)}`;
  return `M${a.x.toFixed(1)} ${a.y.toFixed(1)}L${b.x.toFixed(1)} ${b.y.toFixed(1)}${end(a)}${end(b)}`;
}

/** The point of a stretch that is nearest to `from`. */
function footOf(from: PlaceM, a: PlaceM, b: PlaceM): PlaceM {
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const share = ((from.xM - a.xM) * dx + (from.yM - a.yM) * dy) / (dx * dx + dy * dy || 1);
  const at = Math.min(1, Math.max(0, share));
  return { xM: a.xM + at * dx, yM: a.yM + at * dy };
}

const apart = (a: PlaceM, b: PlaceM) => Math.hypot(a.xM - b.xM, a.yM - b.yM);
