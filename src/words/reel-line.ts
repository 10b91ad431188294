/** The line off the reel in words: what to do about the first guide, why, and how each ring after it was chosen. */
import { overLimits } from '../engine/flow/first-guide.ts';
import type { ReelLineAnswer } from '../engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../engine/flow/reel-line-question.ts';
import type { SteppedGuide } from '../engine/flow/stepped-rings.ts';
import { guideName } from '../engine/kinds/guides.ts';
import type { Writer } from './writer.ts';

export interface FanWords {
  deed: string;
  why: string;
}

export function fanInWords(question: ReelLineQuestion, answer: ReelLineAnswer, w: Writer): FanWords {
  const { keeps, better } = answer;
  if (keeps) return { deed: 'The first guide suits this reel.', why: goodWords(question, answer, w) };
  const why = badWords(question, answer, w);
  if (!better) {
    return {
      deed: 'No ring on the list keeps your limits.',
      why: `${why} Try a ring of another height, measure the tilt again, or widen a limit.`,
    };
  }
  const first = question.guides[question.guides.length - 1];
  const byM = first.fromTipM - better.fromTipM;
  const far = w.tick(Math.abs(byM));
  const toward = byM > 0 ? 'tip' : 'butt';
  const there = `There it turns up to ${w.angle(better.largestRad)}.`;
  const same = guideName(better.ring) === guideName(first);
  return {
    deed: same
      ? `Move the first guide ${far} toward the ${toward}.`
      : `Use a ${guideName(better.ring)} as first guide, ${far} nearer the ${toward}.`,
    why: `${why} ${there}`,
  };
}

function goodWords({ limits }: ReelLineQuestion, { first }: ReelLineAnswer, w: Writer): string {
  const { least, largest } = first.lineAngleRad;
  const turns = `The line turns ${w.angle(least)} to ${w.angle(largest)} in it; your limit is ${w.angle(limits.lineAngleRad)}.`;
  return `${turns} It clears the ${first.over} by ${w.fine(first.clearance.clearanceM)}.`;
}

function badWords(question: ReelLineQuestion, { first }: ReelLineAnswer, w: Writer): string {
  const { limits } = question;
  const { clearanceM } = first.clearance;
  const over = overLimits(question, first);
  return [
    over.turn &&
      `The line turns up to ${w.angle(first.lineAngleRad.largest)} in it; your limit is ${w.angle(limits.lineAngleRad)}.`,
    over.touch && `The line hits the ${first.over}.`,
    over.near &&
      `The line passes ${w.fine(clearanceM)} from the ${first.over}; your limit is ${w.fine(limits.clearanceM)}.`,
    over.axis && 'The spindle’s line misses the ring.',
  ]
    .filter(Boolean)
    .join(' ');
}

/** Where the spindle's line meets the blank, from the lip. */
export function meetingInWords(
  { source, freeM }: ReelLineQuestion,
  { axisMeetsFromTipM: meets }: ReelLineAnswer,
  w: Writer,
): string | undefined {
  if (!('lipDiameterM' in source)) return undefined;
  const tilt = `Spindle’s tilt ${w.lineAngle(source.tiltRad)}.`;
  if (!meets) return `${tilt} Its line does not meet the blank ahead of the reel.`;
  const fromLip = (fromTipM: number) => w.tick(freeM - source.alongM - fromTipM);
  const at = `${tilt} Its line meets the blank ${fromLip(meets.likeliest)} from the lip`;
  if (meets.largest - meets.least < 0.005) return `${at}.`;
  return `${at}: ${fromLip(meets.largest)} to ${fromLip(meets.least)} where each sighting is ${w.fine(0.001)} off.`;
}

/** Why this ring stands there. */
export function stepInWords({ because, neededM, ring }: SteppedGuide): string {
  const asks = `the funnel asks for ${millimetres(neededM)} inside`;
  switch (because) {
    case 'running':
      return 'the funnel is down to your running guides';
    case 'funnel':
      return `${asks}; the smallest on the list that wide has ${millimetres(ring?.insideM ?? 0)}`;
    case 'knot':
      return `${asks}; your knot asks for more`;
    case 'as-before':
      return `${asks}; nothing on the list is that wide and no wider than the ring before`;
    case 'none-wide-enough':
      return 'no ring on the list lets your knot pass';
  }
}

/** Rings are spoken of in millimetres by everybody. */
function millimetres(lengthM: number): string {
  return `${(1000 * lengthM).toFixed(1)} mm`;
}
