/** What a request says in space, in the engine's words, and what of it cannot be answered. */
import type { z } from 'zod';
import type { Side } from '../engine/bend/bend.ts';
import type { SpaceRequest } from '../engine/space/bend-in-space.ts';
import { inPlane } from '../engine/space/planar.ts';

/** `torsion` may be missing, and a guide says either where it stands round the rod or on which side. */
export interface AskedInSpace extends Omit<SpaceRequest, 'rod' | 'guides' | 'reel'> {
  rod: Omit<SpaceRequest['rod'], 'torsion'> & Partial<Pick<SpaceRequest['rod'], 'torsion'>>;
  guides?: { fromTipM: number; ringHeightM: number; side?: Side; aroundRad?: number }[];
  reel?: { alongM: number; offsetM: number; aroundRad?: number };
}

function aroundOf({ side, aroundRad }: { side?: Side; aroundRad?: number }): number {
  return aroundRad ?? (side === 'over' ? Math.PI : 0);
}

/** A reel that does not say where it stands is on the tip-top's side, or where rings stand round the rod, the nearest ring's. */
export function inSpaceWords(asked: AskedInSpace) {
  const { guides, reel } = asked;
  const nearest = guides?.some(({ aroundRad }) => aroundRad !== undefined) ? guides.at(-1) : guides?.[0];
  return {
    ...asked,
    guides: guides?.map((guide) => ({ ...guide, aroundRad: aroundOf(guide) })),
    reel: reel && { ...reel, aroundRad: reel.aroundRad ?? aroundOf(nearest ?? {}) },
  };
}

/** True where the request names anything that only space has. */
export function speaksOfSpace({ rod, rollRad, guides = [], reel, load }: AskedInSpace): boolean {
  const words = [
    rod.torsion,
    rollRad,
    reel?.aroundRad,
    load.tip?.zN,
    load.line?.pullSideRad,
    ...guides.map(({ aroundRad }) => aroundRad),
    ...(rod.restCurvature ?? []).map(({ sidePerM }) => sidePerM),
  ];
  return words.some((word) => word !== undefined);
}

export function checkSpace(asked: AskedInSpace, context: z.core.$RefinementCtx): void {
  const say = (path: (string | number)[], message: string) =>
    context.addIssue({ code: 'custom', path, message });
  const { guides = [], contact } = asked;
  guides.forEach(({ side, aroundRad }, index) => {
    if (side === undefined && aroundRad === undefined) {
      say(['guides', index, 'side'], 'is missing: give "under" or "over", or aroundRad in its place');
    } else if (side !== undefined && aroundRad !== undefined) {
      say(['guides', index, 'aroundRad'], 'stands beside side: give one of the two');
    }
  });
  const leaves = !inPlane(inSpaceWords(asked));
  if (contact && !leaves && !asked.rod.torsion && !allAlike(guides)) {
    const message =
      'asks for the rod in space where rings stand unlike ways round it: give rod.torsion, [{fromTipM, GJNm2}], or all rings one side';
    say(['contact'], message);
  }
  if (!leaves) return;
  if (asked.rod.torsion) return;
  const message = `is missing: ${outOfPlane(asked)} takes the rod out of its plane, and it then twists: give GJ along the blank, [{fromTipM, GJNm2}]`;
  say(['rod', 'torsion'], message);
}

/** Whether all rings stand the same way round the rod. */
export function allAlike(guides: NonNullable<AskedInSpace['guides']>): boolean {
  return guides.every((guide) => Math.cos(aroundOf(guide) - aroundOf(guides[0])) > 1 - 1e-12);
}

/** The first word that leaves the plane. */
function outOfPlane({ rod, rollRad = 0, guides = [], load }: AskedInSpace): string {
  const turned = (angle = 0) => Math.abs(Math.sin(angle)) >= 1e-12;
  if (turned(rollRad)) return 'rollRad';
  if ((load.tip?.zN ?? 0) !== 0) return 'load.tip.zN';
  if (turned(load.line?.pullSideRad)) return 'load.line.pullSideRad';
  const ring = guides.findIndex(({ aroundRad }) => turned(aroundRad));
  if (ring >= 0) return `guides[${ring}].aroundRad`;
  const bow = (rod.restCurvature ?? []).findIndex(({ sidePerM = 0 }) => sidePerM !== 0);
  return bow >= 0 ? `rod.restCurvature[${bow}].sidePerM` : 'reel.aroundRad';
}
