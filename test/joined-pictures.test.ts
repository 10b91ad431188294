/**
 * A picture of the whole rod and a close-up of its top third, painted by a renderer that shares no code with the tracer,
 * traced and joined: how far are angles near the tip off, with the close-up and without? JOINED_PICTURES says how many
 * pairs (12 in the long run); JOINED_NUMBERS=1 prints each.
 */

import { expect, test } from 'vitest';
import { joinCurves } from '../src/engine/load-test/join-curves.ts';
import { traceImage } from '../src/image/trace/trace-image.ts';
import { type Photo, type PhotoChoice, paintPhoto } from './render/photo.ts';
import { inWords } from './support/in-words.ts';

const count = Number(process.env.JOINED_PICTURES ?? 2);
const [widthPx, heightPx] = [1600, 1200];

interface At {
  xM: number;
  yM: number;
}

function traced({ picture, marks, ends }: Photo) {
  const { width, height, rgb: data } = picture;
  const answer = traceImage({ marks, ends }, { width, height, channels: 3, data });
  if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
  return answer.points;
}

/** The place so far from the tip along the curve, the tip last. */
function fromTip(curve: readonly At[], alongM: number): At {
  let left = alongM;
  for (let i = curve.length - 1; i > 0; i--) {
    const [a, b] = [curve[i], curve[i - 1]];
    const stepM = Math.hypot(b.xM - a.xM, b.yM - a.yM);
    if (left <= stepM)
      return { xM: a.xM + ((b.xM - a.xM) * left) / stepM, yM: a.yM + ((b.yM - a.yM) * left) / stepM };
    left -= stepM;
  }
  return curve[0];
}

/** Turn between neighbouring chords of 10 cm, over the top half metre. */
function turns(curve: readonly At[]): number[] {
  const angle = (nearM: number): number => {
    const [a, b] = [fromTip(curve, nearM), fromTip(curve, nearM + 0.1)];
    return Math.atan2(a.yM - b.yM, a.xM - b.xM);
  };
  return [0.02, 0.08, 0.14, 0.2, 0.26, 0.32].map((at) => angle(at) - angle(at + 0.1));
}

function rmsOff(seen: readonly number[], truth: readonly number[]): number {
  return Math.sqrt(seen.reduce((sum, one, i) => sum + (one - truth[i]) ** 2, 0) / seen.length);
}

test(`of ${count} painted pairs each is joined, and angles near the tip are nearer the truth than in the whole alone`, () => {
  const alone: number[] = [];
  const both: number[] = [];
  for (let seed = 501; seed < 501 + count; seed++) {
    const choice: PhotoChoice = { seed, widthPx, heightPx, marks: 4, clutter: 0.5 };
    const whole = paintPhoto({ ...choice, pair: 'whole' });
    const points = traced(whole);
    const joined = joinCurves(points, traced(paintPhoto({ ...choice, pair: 'close-up' })));
    if (joined.status !== 'joined') throw new Error(`seed ${seed}: ${inWords(joined.finding)}`);
    const truth = turns(whole.axis.map(({ x, y }) => ({ xM: x, yM: y })));
    alone.push(rmsOff(turns(points), truth));
    both.push(rmsOff(turns(joined.points), truth));
    if (process.env.JOINED_NUMBERS)
      console.log(
        `seed ${seed}: turn over 2 × 10 cm, whole ${degrees(alone.at(-1))}°, joined ${degrees(both.at(-1))}°`,
      );
  }
  const over = (values: readonly number[]) => Math.hypot(...values) / Math.sqrt(count);
  if (process.env.JOINED_NUMBERS)
    console.log(`all: whole ${degrees(over(alone))}°, joined ${degrees(over(both))}°`);
  expect(over(both)).toBeLessThan(0.75 * over(alone));
}, 1_800_000);

function degrees(angleRad = 0): string {
  return ((180 / Math.PI) * angleRad).toFixed(3);
}
