/** Which rings are marked in the one strong colour: those at readings beyond a limit. Ring 0 is the tip-top. */
import type { LayoutLimits } from '../../engine/layout/ladder.ts';
import type { RuledLoad, RuledReading } from '../../engine/layout/rule-reading.ts';

/** Rings at the worst reading of all loads, where that is beyond its limit. */
export function worstRings({ worstAt }: RuledReading): Set<number> {
  if (!(worstAt.ratio > 1) || worstAt.index < 0) return new Set();
  return new Set(worstAt.metric === 'lineAngle' ? [worstAt.index] : [worstAt.index, worstAt.index + 1]);
}

/** Rings at readings beyond a limit under one load. */
export function ringsBeyond(load: RuledLoad, limits: LayoutLimits): Set<number> {
  const rings = new Set<number>();
  load.rings.slice(1, -1).forEach(({ lineAngleRad }, i) => {
    if (lineAngleRad > limits.lineAngleRad) rings.add(i + 1);
  });
  load.spans.forEach(({ gapM, extraBendPerM }, span) => {
    if (gapM > limits.gapM || extraBendPerM > limits.extraBendPerM) {
      rings.add(span);
      rings.add(span + 1);
    }
  });
  return rings;
}
