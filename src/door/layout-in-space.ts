/** What a layout request says in space and cannot be answered. */
import type { z } from 'zod';
import { byQuantity } from '../engine/layout/criteria.ts';
import { onOneSide } from '../engine/layout/ladder-in-space.ts';
import type { GuideSet, LadderLoad, LadderRequest } from '../engine/layout/ladder-request.ts';

interface Asked extends Omit<LadderRequest, 'guides' | 'ladder' | 'limits' | 'rod'> {
  /** Left out where a bench stands in its place: its rod is planar. */
  rod?: LadderRequest['rod'];
  guides: Omit<GuideSet, 'side'> & Partial<Pick<GuideSet, 'side'>>;
  ladder?: readonly LadderLoad[];
  limits?: { intoBlankM?: number };
}

export function checkLayoutInSpace(asked: Asked, context: z.core.$RefinementCtx): void {
  const objection = sidesObjection(asked.guides) ?? torsionObjection(asked) ?? contactObjection(asked);
  if (objection) context.addIssue({ code: 'custom', ...objection });
}

function sidesObjection({ side, aroundRad, count }: Asked['guides']) {
  const path = ['guides', 'aroundRad'];
  if (side === undefined && aroundRad === undefined) {
    const message = 'is missing: give "under" or "over", or aroundRad for each guide';
    return { path: ['guides', 'side'], message };
  }
  if (side !== undefined && aroundRad !== undefined) {
    return { path, message: 'stands beside side: give one of the two' };
  }
  if (!aroundRad || aroundRad.length === count) return undefined;
  return { path, message: `has ${aroundRad.length} angles for ${count} guides: give one for each guide` };
}

function torsionObjection(asked: Asked) {
  const { guides, rod = benchRod, ladder = [] } = asked;
  if (rod.torsion || guides.ringHeightsM.length !== guides.count) return undefined;
  const { side = 'under' } = guides;
  if (onOneSide({ ...asked, rod, guides: { ...guides, side }, ladder, limits: noLimits })) return undefined;
  const message =
    'is missing: guides that stand unlike ways round the rod, a roll, a side bow or a sideways pull take the rod out of its plane, and it then twists: give GJ along the blank, [{fromTipM, GJNm2}]';
  return { path: ['rod', 'torsion'], message };
}

/** The line is judged against the blank where it stays in the plane of the rod. */
function contactObjection(asked: Asked) {
  const { contact, guides, limits, rollRad = 0, ladder = [] } = asked;
  if (!contact && limits?.intoBlankM !== undefined) {
    const message = "has no blank to go by: give contact, the blank's diameters, or leave this limit out";
    return { path: ['limits', 'intoBlankM'], message };
  }
  const leaves = rollRad !== 0 || ladder.some(({ pullSideRad = 0 }) => pullSideRad !== 0);
  if (!contact || (guides.side === 'over' && !leaves)) return undefined;
  const message =
    'is for guides on top of a rod that stays in its plane: give side "over" without roll or sideways pull, or leave contact out';
  return { path: ['contact'], message };
}

const noLimits = byQuantity(() => 1);

/** What a bench tells of bends in its plane alone. */
const benchRod: LadderRequest['rod'] = { lengthM: 1, stiffness: [] };
