/**
 * Angles for the guides of a spiral by what it is judged by: the largest turn of the line at a ring against its limit,
 * the line's clearance of blank and foregrip, the torque in the hand. The guides between on top and under are turned
 * one at a time on ever finer steps; marks stay where they are. Steps and weights are our choice.
 */
import { ringLimitRad } from '../layout/criteria.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { GuideRoundBlank } from './guides-round.ts';
import { type RoundAtLoad, type RoundQuestion, roundAnswer } from './round-answer.ts';

export interface SpiralQuestion extends RoundQuestion {
  by: 'right' | 'left';
  /** Where each guide stands now, and evenly turned. */
  round: readonly Pick<GuideRoundBlank, 'fromTopRad' | 'proposedRad'>[];
}
export interface SpiralJudged {
  /** Of each guide's foot, from the tip down. */
  fromTopRad: number[];
  /** Of the turned guides and their neighbours, the largest turn over its limit, over all loads; ring 0 is the tip-top's. */
  turn: { ratio: number; ring: number; load: number; valueRad: number };
  /** The least, over all loads. */
  clearM: number;
  /** The largest, over all loads. */
  handTorqueNm: number;
}
export interface SpiralProposal {
  now: SpiralJudged;
  best: SpiralJudged;
}

const degree = Math.PI / 180;
const choice = {
  stepsRad: [30 * degree, 10 * degree, 5 * degree],
  /** The line should pass the blank by this much. */
  wantedClearM: 0.002,
  /** So much torque counts as much as a twentieth of the limit on the turn. */
  torqueNm: 0.1,
};

/** Undefined where the spiral has no guide between on top and under, or a load finds no bend. */
export function proposeSpiral(question: SpiralQuestion): SpiralProposal | undefined {
  const moving = turnedGuides(question);
  const now = judge(
    question,
    question.round.map(({ fromTopRad }) => fromTopRad),
  );
  if (!now || moving.length === 0) return undefined;
  const even = judge(
    question,
    question.round.map(({ fromTopRad, proposedRad }, i) => (moving.includes(i) ? proposedRad : fromTopRad)),
  );
  const best = choice.stepsRad.reduce(
    (from, stepRad) => turned(question, from, moving, stepRad),
    even && cost(even) < cost(now) ? even : now,
  );
  return { now, best };
}

/** Between on top and under where the spiral turns evenly. */
function turnedGuides({ round }: SpiralQuestion): number[] {
  return round.flatMap(({ proposedRad }, i) =>
    proposedRad > 1e-6 && proposedRad < Math.PI - 1e-6 ? [i] : [],
  );
}

/** Turns each guide by a step either way as long as that helps. */
function turned(
  question: SpiralQuestion,
  from: SpiralJudged,
  moving: readonly number[],
  stepRad: number,
): SpiralJudged {
  let best = from;
  for (let tried = 0; tried < 2 * moving.length; ) {
    const guide = moving[Math.floor(tried / 2) % moving.length];
    const wanted = onStep(best.fromTopRad[guide], tried % 2 === 0 ? stepRad : -stepRad);
    const next = best.fromTopRad.map((at, i) => (i === guide ? wanted : at));
    const there = climbs(next) ? judge(question, next) : undefined;
    if (there && cost(there) < cost(best) - 1e-6) {
      best = there;
      tried = 0;
    } else tried++;
  }
  return best;
}

/** Angles are proposed in steps of 5°, which a strip of paper round the blank can tell. */
function onStep(fromRad: number, byRad: number): number {
  return Math.round((fromRad + byRad) / (5 * degree)) * 5 * degree;
}

/** From under at the tip to the top at the reel, no guide back. */
function climbs(fromTopRad: readonly number[]): boolean {
  return fromTopRad.every(
    (at, i) => at > -1e-9 && at < Math.PI + 1e-9 && (i === 0 || at <= fromTopRad[i - 1] + 1e-9),
  );
}

function judge(question: SpiralQuestion, fromTopRad: number[]): SpiralJudged | undefined {
  const ladder = turnedLadder(question, fromTopRad);
  const loads = roundAnswer({ ...question, ladder });
  if (loads.some(({ status, stable }) => status !== 'converged' || !stable)) return undefined;
  return {
    fromTopRad,
    turn: largestTurn(loads, ladder, turnedGuides(question)),
    clearM: Math.min(
      ...loads.flatMap(({ clearM, foregripClearM = clearM[0] }) => [...clearM, foregripClearM]),
    ),
    handTorqueNm: Math.max(...loads.map(({ handTorqueNm }) => Math.abs(handTorqueNm))),
  };
}

/** A ring turns as far as its foot does. */
export function turnedLadder(
  { ladder, round, by }: Pick<SpiralQuestion, 'ladder' | 'round' | 'by'>,
  fromTopRad: readonly number[],
): LadderRequest {
  const toward = by === 'left' ? -1 : 1;
  const aroundRad = ladder.guides.aroundRad?.map(
    (at, i) => at - toward * (fromTopRad[i] - round[i].fromTopRad),
  );
  return { ...ladder, guides: { ...ladder.guides, aroundRad } };
}

/** The tip-top's own turn is the pull's; the first guide from the reel has a limit of its own, or none. */
function largestTurn(
  loads: readonly RoundAtLoad[],
  { limits, guides }: LadderRequest,
  moving: readonly number[],
): SpiralJudged['turn'] {
  const [tipSide, buttSide] = [moving[0], moving[moving.length - 1] + 2];
  let most = { ratio: 0, ring: tipSide, load: 0, valueRad: 0 };
  loads.forEach(({ lineAngleRad }, load) => {
    lineAngleRad.forEach((valueRad, ring) => {
      const limitRad = ringLimitRad(limits, ring, guides.count);
      if (ring < tipSide || ring > buttSide || limitRad === undefined) return;
      const ratio = valueRad / limitRad;
      if (ratio > most.ratio) most = { ratio, ring, load, valueRad };
    });
  });
  return most;
}

function cost({ turn, clearM, handTorqueNm }: SpiralJudged): number {
  const near = Math.max(0, (choice.wantedClearM - clearM) / choice.wantedClearM);
  return turn.ratio + near + (0.05 * handTorqueNm) / choice.torqueNm;
}
