/**
 * Marks to camera, with the checks a bench needs: too few, on one line, one distance mistyped.
 *
 * A mistyped distance is found by leaving each mark out in turn: with the right one gone the others suddenly
 * agree, and their camera says where it ought to be.
 */

import type { Finding } from '../../engine/finding.ts';
import { imageFound } from '../image-kinds.ts';
import { type CameraFit, cameraFit } from './camera-fit.ts';
import { cameraBackProject } from './camera-model.ts';
import type { Mark } from './camera-problem.ts';
import { gaugedCameraFit } from './gauge-marks.ts';
import type { Point } from './homography.ts';

interface MarksChoice {
  /** Root mean square misfit, in standard errors of a mark, above which a culprit is looked for. */
  suspectMisfit: number;
  /** Above this it is said, without leaving a mark out: a slip may hide in it. */
  doubtMisfit: number;
  /** The culprit's absence must shrink the cost to this share, and the next best must stay this much worse. */
  culpritShare: number;
  runnerUpFactor: number;
  /** The same among five marks: without one of them the other four hardly overdetermine a camera. */
  runnerUpOfFive: number;
  /** Marks that scatter by less than so many pixels may all be told a little wrong: none is to blame */
  tapePx: number;
  /** unless the others agree so many times better without it. */
  agreeFactor: number;
}

const marksChoice: MarksChoice = {
  suspectMisfit: 3.5,
  doubtMisfit: 2.5,
  culpritShare: 0.12,
  runnerUpFactor: 3,
  runnerUpOfFive: 20,
  tapePx: 8,
  agreeFactor: 2.7,
};

export type MarksAnswer =
  | { status: 'converged'; fit: CameraFit; leftOut: number[]; findings: Finding[] }
  | { status: 'refused'; findings: Finding[] };

interface Picture {
  widthPx: number;
  heightPx: number;
}

/** Fits the camera to the marks or says what is wrong with them. */
export function marksToCamera(marks: readonly Mark[], picture: Picture, choice = marksChoice): MarksAnswer {
  const wrong = marksWrong(marks, picture);
  if (wrong.length > 0) return { status: 'refused', findings: wrong };
  const findings: Finding[] = [];
  const leftOut: number[] = [];
  let fit = cameraFit({ marks, ...picture });
  while (misfitOf(fit, marks.length - leftOut.length) > choice.suspectMisfit) {
    const culprit = findCulprit(marks, leftOut, fit, picture, choice);
    if (culprit === undefined) {
      findings.push(imageFound('marks', 'camera/marks-disagree', { missM: fit.marksRmsM }));
      break;
    }
    leftOut.push(culprit.index);
    fit = culprit.fit;
    findings.push(culpritFinding(marks, culprit));
  }
  const kept = marks.filter((_, i) => !leftOut.includes(i));
  const misfit = misfitOf(fit, kept.length);
  if (findings.length === 0 && misfit > choice.doubtMisfit) {
    findings.push(imageFound('marks', 'camera/marks-loose', { missM: fit.marksRmsM, times: misfit }));
  }
  if (nearlyOnLine(kept)) {
    findings.push(imageFound('marks', 'camera/marks-nearly-on-line', {}));
  }
  return { status: 'converged', fit: gaugedCameraFit({ marks: kept, ...picture }), leftOut, findings };
}

function marksWrong(marks: readonly Mark[], picture: Picture): Finding[] {
  const findings: Finding[] = [];
  for (const [i, mark] of marks.entries()) {
    if (![mark.pixel.x, mark.pixel.y, mark.plane.x, mark.plane.y].every(Number.isFinite)) {
      findings.push(imageFound(`marks[${i}]`, 'camera/mark-not-finite', {}));
    } else if (outside(mark.pixel, picture)) {
      const { widthPx, heightPx } = picture;
      const values = { xPx: mark.pixel.x, yPx: mark.pixel.y, widthPx, heightPx };
      findings.push(imageFound(`marks[${i}].px`, 'camera/mark-outside', values));
    }
  }
  if (findings.length > 0) return findings;
  if (marks.length < 4) {
    return [imageFound('marks', 'camera/few-marks', { count: marks.length })];
  }
  for (let i = 0; i < marks.length; i++) {
    for (let j = i + 1; j < marks.length; j++) findings.push(...tooClose(marks, i, j, picture));
  }
  if (
    findings.length === 0 &&
    (flatness(marks.map((m) => m.plane)) < 0.02 || flatness(marks.map((m) => m.pixel)) < 0.01)
  ) {
    findings.push(imageFound('marks', 'camera/marks-on-line', {}));
  }
  return findings;
}

function outside(at: Point, picture: Picture): boolean {
  return at.x < -0.5 || at.y < -0.5 || at.x > picture.widthPx - 0.5 || at.y > picture.heightPx - 0.5;
}

function tooClose(marks: readonly Mark[], i: number, j: number, picture: Picture): Finding[] {
  const a = marks[i];
  const b = marks[j];
  const apartM = Math.hypot(a.plane.x - b.plane.x, a.plane.y - b.plane.y);
  if (apartM < 0.005) {
    return [imageFound(`marks[${j}].atM`, 'camera/same-place', { mark: i + 1, otherMark: j + 1 })];
  }
  const apartPx = Math.hypot(a.pixel.x - b.pixel.x, a.pixel.y - b.pixel.y);
  if (apartPx < Math.max(picture.widthPx, picture.heightPx) / 1000) {
    return [imageFound(`marks[${j}].px`, 'camera/same-pixel', { mark: i + 1, otherMark: j + 1 })];
  }
  return [];
}

/** Smaller over larger spread of a point set: 0 for points on one line. */
function flatness(points: readonly Point[]): number {
  const n = points.length;
  const mx = points.reduce((sum, point) => sum + point.x, 0) / n;
  const my = points.reduce((sum, point) => sum + point.y, 0) / n;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (const point of points) {
    xx += (point.x - mx) ** 2;
    yy += (point.y - my) ** 2;
    xy += (point.x - mx) * (point.y - my);
  }
  const middle = (xx + yy) / 2;
  const spread = Math.hypot((xx - yy) / 2, xy);
  return Math.sqrt(Math.max(0, middle - spread) / (middle + spread || 1));
}

/** Whether leaving out one mark puts the rest on a line. */
function nearlyOnLine(marks: readonly Mark[]): boolean {
  return marks.some((_, i) => flatness(marks.filter((_, j) => j !== i).map((mark) => mark.plane)) < 0.02);
}

/** Root mean square misfit in standard errors, counting the usual values as readings. */
function misfitOf(fit: CameraFit, marks: number): number {
  return Math.sqrt((2 * fit.cost) / Math.max(1, 2 * marks - 7));
}

interface Culprit {
  index: number;
  fit: CameraFit;
}

function findCulprit(
  marks: readonly Mark[],
  leftOut: readonly number[],
  whole: CameraFit,
  picture: Picture,
  choice: MarksChoice,
): Culprit | undefined {
  const candidates = marks.map((_, index) => index).filter((index) => !leftOut.includes(index));
  if (candidates.length < 5) return undefined;
  const trials = candidates.map((index) => {
    const rest = marks.filter((_, i) => i !== index && !leftOut.includes(i));
    return { index, fit: cameraFit({ marks: rest, ...picture }) };
  });
  trials.sort((a, b) => a.fit.cost - b.fit.cost);
  const [best, second] = trials;
  const factor = candidates.length === 5 ? choice.runnerUpOfFive : choice.runnerUpFactor;
  const clear =
    best.fit.cost < choice.culpritShare * whole.cost && second.fit.cost > factor * Math.max(best.fit.cost, 1);
  return clear && standsOut(marks, leftOut, best.index, picture, choice) ? best : undefined;
}

function standsOut(
  marks: readonly Mark[],
  leftOut: readonly number[],
  index: number,
  picture: Picture,
  { tapePx, agreeFactor }: MarksChoice,
): boolean {
  const scatterPx = (without: readonly number[]) =>
    gaugedCameraFit({ marks: marks.filter((_, i) => !without.includes(i)), ...picture }).markSigmaPx;
  const all = scatterPx(leftOut);
  return all > tapePx || all > agreeFactor * scatterPx([...leftOut, index]);
}

function culpritFinding(marks: readonly Mark[], culprit: Culprit): Finding {
  const mark = marks[culprit.index];
  const ought = cameraBackProject(culprit.fit.camera, mark.pixel);
  const offX = mark.plane.x - ought.x;
  const offY = mark.plane.y - ought.y;
  const axis =
    Math.abs(offX) > 8 * Math.abs(offY) ? ' in X' : Math.abs(offY) > 8 * Math.abs(offX) ? ' in Y' : '';
  return imageFound(`marks[${culprit.index}].atM`, 'camera/mark-odd', {
    mark: culprit.index + 1,
    givenXM: mark.plane.x,
    givenYM: mark.plane.y,
    oughtXM: ought.x,
    oughtYM: ought.y,
    offM: Math.hypot(offX, offY),
    axis,
  });
}
