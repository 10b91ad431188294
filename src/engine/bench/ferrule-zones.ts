import type { AssembledBlank, AssembledJoint, Zone } from './assemble.ts';

export interface FerruleZone extends Zone {
  joint: number;
}

/**
 * Clear distance between a guide's foot and a ferrule's edge, so that the wraps do not meet.
 * Common practice, no source: 25 mm beside a spigot, 6 to 15 mm elsewhere.
 */
export const commonFerruleClearM = { spigot: 0.025, other: 0.01 } as const;

/**
 * Zones where no guide's foot may lie: each ferrule with the clear distance on both sides, cut at the blank's
 * ends. `clearM` is the builder's own distance for all joints; left out, the common ones.
 */
export function keepOutZones(blank: AssembledBlank, clearM?: number): FerruleZone[] {
  return blank.joints.map((joint, index) => {
    const clear = clearM ?? commonClear(joint);
    return {
      joint: index,
      fromTipM: Math.max(0, joint.seat.fromTipM - clear),
      toTipM: Math.min(blank.lengthM, joint.seat.toTipM + clear),
    };
  });
}

function commonClear(joint: AssembledJoint): number {
  return joint.kind === 'spigot' ? commonFerruleClearM.spigot : commonFerruleClearM.other;
}

/** Where the blank is doubled, as a factor on the blank beside it where the builder stated one. */
export function stiffZones(blank: AssembledBlank): (Zone & { ratio?: number })[] {
  return blank.joints
    .filter(({ doubled }) => doubled.toTipM - doubled.fromTipM > leastDoubledM)
    .map(({ doubled, stiffnessRatio: ratio }) => ({ ...doubled, ...(ratio === undefined ? {} : { ratio }) }));
}

/** An overlap that was not measured doubles nothing. */
const leastDoubledM = 1e-3;
