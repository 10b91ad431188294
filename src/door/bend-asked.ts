import { type BendRequest, bend } from '../engine/bend/bend.ts';
import { bendInSpace, type SpaceRequest } from '../engine/space/bend-in-space.ts';
import { flatInSpace, inPlane } from '../engine/space/planar.ts';
import { type AskedInSpace, allAlike, inSpaceWords, speaksOfSpace } from './space-words.ts';

type Asked = AskedInSpace;

/** In the plane or in space, as the request asks; it has passed the door's checks. */
export function bendAsked(asked: Asked): object {
  const words = inSpaceWords(withSlackLine(asked));
  const { friction, contact } = asked;
  if (!speaksOfSpace(asked)) return bend(planarAsAsked(withSlackLine(asked)));
  const planar = inPlane(words);
  const slidesRound = contact && words.rod.torsion && !allAlike(asked.guides ?? []);
  if (planar && !slidesRound && (friction || contact || !words.rod.torsion)) {
    return flatInSpace(bend({ ...planar, friction, contact }));
  }
  return bendInSpace(words as SpaceRequest);
}

/** Guides that all say a side, and nothing of space: today's planar request. */
function planarAsAsked({ guides, reel, ...rest }: Asked): BendRequest {
  return {
    ...rest,
    guides: guides?.map(({ side = 'under', ...guide }) => ({ ...guide, side })),
    reel,
  };
}

/**
 * A rod with rings and a reel but no line in the load is read with a slack line through them, pulled the way
 * the tip force points, so that the rings and spans are answered all the same.
 */
function withSlackLine(asked: Asked): Asked {
  const { guides = [], reel, load } = asked;
  if (load.line || !reel || guides.length === 0) return asked;
  const { xN, yN, zN = 0 } = load.tip ?? { xN: 0, yN: 0 };
  const pullAngleRad = xN === 0 && yN === 0 ? -Math.PI / 2 : Math.atan2(yN, xN);
  const line = {
    tensionN: 0,
    pullAngleRad,
    ...(zN === 0 ? {} : { pullSideRad: Math.atan2(zN, Math.hypot(xN, yN)) }),
  };
  return { ...asked, load: { ...load, line } };
}
