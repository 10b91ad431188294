/**
 * A layout whose guides stand round the blank, read under every load of its ladder: how far the line turns in every
 * ring, how far it clears the blank, and what the hand feels with the rod pulled straight.
 */
import { ladderDefaults } from '../layout/ladder.ts';
import { bendRequestOf, type LaidGuides, spaceRequestOf } from '../layout/laid-bend.ts';
import type { Foregrip } from '../layout/line-on-blank.ts';
import type { OutsideDiameter } from '../layout/rule-reading.ts';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import { bendInSpace, type SpaceAnswer } from '../space/bend-in-space.ts';
import { gripClearance, lineClearance } from '../space/line-clearance.ts';
import { spaceLoadingOf } from '../space/space-request.ts';
import type { Spiral } from '../space/spiral.ts';
import { torsionFromRatio } from '../torsion/torsion-ratio.ts';
import { type HandReading, handTorqueNm, torqueInHand } from './torque-in-hand.ts';

export interface RoundQuestion extends LaidGuides {
  diameters: readonly OutsideDiameter[];
  foregrip?: Foregrip;
}
export interface RoundAtLoad {
  status: SpaceAnswer['status'];
  /** False where a small push makes the rod leave the bend that is read. */
  stable: boolean;
  /** Ring 0 is the tip-top's. */
  lineAngleRad: number[];
  /** Of each ring's stretch towards the reel: negative where the straight line would run through the blank. */
  clearM: number[];
  /** Of the last stretch from the foregrip, where there is one. */
  foregripClearM?: number;
  handTorqueNm: number;
  tipTwistRad: number;
}

/** One answer for every load; the torsion is known, also where all guides stand on one side. */
export function roundAnswer({ ladder, fromTipM, diameters, foregrip }: RoundQuestion): RoundAtLoad[] {
  const outside = piecewiseLinear(
    diameters.map((row) => row.fromTipM),
    diameters.map((row) => row.outsideM),
  );
  return ladder.ladder.map((load) => {
    const request = spaceRequestOf({ ladder, fromTipM }, load);
    const answer = bendInSpace(request, ladderDefaults);
    const [x, y, z] = spaceLoadingOf(request).line?.reelM ?? [0, 0, 0];
    return {
      status: answer.status,
      stable: answer.stable,
      lineAngleRad: answer.rings.map(({ lineAngleRad }) => lineAngleRad),
      clearM: lineClearance(answer, { ringFromTipM: [0, ...fromTipM], reelM: [x, y, z], outside }),
      foregripClearM:
        foregrip &&
        gripClearance(answer, { ...foregrip, reelM: [x, y, z], buttAngleRad: ladder.buttAngleRad }),
      handTorqueNm: handTorqueNm(request, answer),
      tipTwistRad: answer.points[0].twistRad,
    };
  });
}

export interface HandsQuestion extends LaidGuides {
  spiral: Spiral;
  /** GJ over EI: usual, and what it may be. */
  shares: { share: number; low: number; high: number };
}
export interface HandRow extends HandReading {
  /** Of the tip's twist over what GJ may be. */
  twistRangeRad: { least: number; most: number };
}

/** On top, under and in a spiral side by side, each guide's ring as high as it stands; where they spiral, as laid. */
export function handsAnswer({ ladder, fromTipM, spiral, shares }: HandsQuestion): HandRow[] {
  const read = (share: number) =>
    torqueInHand({
      rod: { ...ladder.rod, torsion: torsionFromRatio(ladder.rod.stiffness, share) },
      buttAngleRad: ladder.buttAngleRad,
      masses: bendRequestOf({ ladder, fromTipM }, ladder.ladder[0]).masses,
      guides: [ladder.tipTop, ...ladder.guides.ringHeightsM.map((ringHeightM) => ({ ringHeightM }))].map(
        ({ ringHeightM }, i) => ({ fromTipM: i === 0 ? 0 : fromTipM[i - 1], ringHeightM }),
      ),
      reel: ladder.reel,
      loads: ladder.ladder.map(({ tensionN, tiedN = 0, pullAngleRad }) => ({
        tensionN: tensionN + tiedN,
        pullAngleRad,
      })),
      spiral,
      aroundRad: ladder.guides.aroundRad,
    });
  const ends = shares.low < shares.high ? [shares.low, shares.high].map(read) : [];
  return read(shares.share).map((row, i) => {
    const twists = [row, ...ends.map((rows) => rows[i])].map(({ tipTwistRad }) => tipTwistRad);
    return { ...row, twistRangeRad: { least: Math.min(...twists), most: Math.max(...twists) } };
  });
}
