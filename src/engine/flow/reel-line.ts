/**
 * The line off the reel of one build: the fan to the first guide on the straight rod and under every load, which first
 * ring keeps it within its limits, and the ring sizes stepped down from there. Geometry: src/engine/spool.
 */
import { makeLadder, readLadder } from '../layout/ladder.ts';
import { type FirstRingRegion, firstRingRegion, ringKeeps } from '../spool/first-ring.ts';
import { type FanUnderLoad, fanUnderLoad } from './fan-under-load.ts';
import {
  type FirstGuideReading,
  firstGuide,
  firstRingQuestion,
  type MeetingPlace,
  meetingPlace,
  nearestKept,
  type TakenRing,
} from './first-guide.ts';
import type { ReelLineQuestion } from './reel-line-question.ts';
import { type SteppedGuide, steppedSizes } from './stepped-rings.ts';

export interface ReelLineAnswer {
  first: FirstGuideReading;
  keeps: boolean;
  axisMeetsFromTipM?: MeetingPlace;
  loads: (FanUnderLoad | undefined)[];
  region: FirstRingRegion;
  /** Nearest place that keeps the limits; with the builder's own ring where one does. */
  better?: TakenRing;
  steps: readonly SteppedGuide[];
}

/** The first guide must stand in front of the reel, the next one in front of it. */
export function readReelLine(question: ReelLineQuestion): ReelLineAnswer {
  const asked = firstRingQuestion(question);
  const first = firstGuide(question);
  const region = firstRingRegion(asked);
  const keeps = ringKeeps(
    asked,
    question.freeM - question.guides[question.guides.length - 1].fromTipM,
    asked.rings[0],
  );
  return {
    first,
    keeps,
    axisMeetsFromTipM: meetingPlace(question),
    loads: loadsOf(question),
    region,
    better: keeps ? undefined : nearestKept(question, asked, region),
    steps: 'lipDiameterM' in question.source ? steppedSizes(question) : [],
  };
}

function loadsOf(question: ReelLineQuestion): (FanUnderLoad | undefined)[] {
  const { ladder, guides, source, surface } = question;
  if (ladder.ladder.length === 0) return [];
  const fromTipM = guides.map((guide) => guide.fromTipM);
  const bent = readLadder(makeLadder(ladder), fromTipM);
  return bent.loads.map((load) =>
    fanUnderLoad(load, { ladder, source, surface, firstFromTipM: fromTipM[fromTipM.length - 1] }),
  );
}
