/**
 * What one live picture says of the taped rod: every ring's place and line angle, the widest gap, beside the limits.
 * In a spiral it says so of the guides under the rod whose neighbours stand under it too: the others stand beside the
 * picture's plane.
 */
import { downRad } from '../../../engine/flow/loads.ts';
import { type Measured, seenRod } from '../../../engine/load-test/seen-rod.ts';
import type { TracedPoint } from '../../../image/trace/trace-request.ts';
import type { SheetModel } from '../../read/sheet-model.ts';

export interface LiveRing {
  /** 0 is the tip-top. */
  ring: number;
  px: readonly [number, number];
  /** Undefined where it does not count, at the tip-top and at the guide nearest the reel, or cannot be seen. */
  lineAngle: Measured | undefined;
}
export interface LiveReadings {
  rings: LiveRing[];
  worstAngle: { ring: number; value: Measured; limitRad: number } | undefined;
  /** Between ring and the next towards the butt. */
  worstGap: { ring: number; value: Measured; limitM: number } | undefined;
}

export function liveReadings(
  points: readonly TracedPoint[],
  { request, field, rod }: Pick<SheetModel, 'request' | 'field' | 'rod'>,
): LiveReadings {
  const { guides, tipTop, limits } = request;
  const inPlane = ringsInPlane(request);
  const heights = [tipTop.ringHeightM, ...guides.ringHeightsM];
  const marks = [0, ...field.fromTipM];
  const seen = seenRod({
    points: points.map(({ xM, yM }) => ({ xM, yM })),
    clampFromTipM: rod.lengthM,
    rings: marks.map((fromTipM, i) => ({ fromTipM, ringHeightM: heights[i] })),
    side: guides.side,
    pullAngleRad: downRad,
  });
  const last = marks.length - 1;
  const rings = marks.map((fromTipM, ring): LiveRing => {
    const counts = ring > 0 && ring < last && inPlane[ring + 1];
    return {
      ring,
      px: pixelAt(points, fromTipM),
      lineAngle: counts ? seen.rings[ring].lineAngleRad : undefined,
    };
  });
  const angle = largest(rings.map(({ lineAngle }) => lineAngle));
  // Behind the stripping guide the line runs to the reel: no span of the layout.
  const gap = largest(seen.gapM.map((one, k) => (inPlane[k + 1] ? one : undefined)));
  return {
    rings,
    worstAngle: angle && { ...angle, limitRad: limits.lineAngleRad },
    worstGap: gap && { ...gap, limitM: limits.gapM },
  };
}

/** The last guide whose line angle a picture shows; 0 where it shows none. */
export function lastGuideRead(request: SheetModel['request']): number {
  return Math.max(0, ringsInPlane(request).lastIndexOf(true) - 1);
}

/** Tip-top first, as far as they stand under one after the other; turned less than this a ring still looks as high. */
function ringsInPlane({ guides, tipTop }: SheetModel['request']): boolean[] {
  const almostUnderRad = 0.2;
  const { aroundRad } = guides;
  if (!aroundRad) return new Array(guides.count + 1).fill(true);
  const under = [tipTop.aroundRad ?? aroundRad[0], ...aroundRad].map((at) => Math.abs(at) < almostUnderRad);
  const first = under.indexOf(false);
  return under.map((_, ring) => first < 0 || ring < first);
}

function largest(values: readonly (Measured | undefined)[]): { ring: number; value: Measured } | undefined {
  let most: { ring: number; value: Measured } | undefined;
  for (const [ring, value] of values.entries()) {
    if (value && (!most || value.value > most.value.value)) most = { ring, value };
  }
  return most;
}

/** Where a place of the rod is seen: along the traced curve, from its end. */
function pixelAt(points: readonly TracedPoint[], fromTipM: number): readonly [number, number] {
  let along = 0;
  for (let i = points.length - 1; i > 0; i--) {
    const [here, next] = [points[i], points[i - 1]];
    const step = Math.hypot(next.xM - here.xM, next.yM - here.yM);
    if (along + step >= fromTipM) {
      const share = (fromTipM - along) / (step || 1);
      return [here.px[0] + share * (next.px[0] - here.px[0]), here.px[1] + share * (next.px[1] - here.px[1])];
    }
    along += step;
  }
  return points[0].px;
}
