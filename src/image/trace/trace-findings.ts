import type { Finding } from '../../engine/finding.ts';
import { pointsSeen } from '../../engine/stiffness/curve-bridges.ts';
import { type ImageKinds, imageFound } from '../image-kinds.ts';
import type { Pixels } from '../pixels.ts';
import type { RefinedCentreline } from './refine-centreline.ts';
import type { TracedPoint, TraceRequest } from './trace-request.ts';

/** What is wrong with the taps, before any work is done. */
export function endFindings(request: TraceRequest, pixels: Pixels): Finding[] {
  const taps = [
    { path: 'ends.butt', at: request.ends.butt },
    { path: 'ends.tip', at: request.ends.tip },
    ...(request.via ?? []).map((at, i) => ({ path: `via[${i}]`, at })),
  ];
  const findings: Finding[] = [];
  for (const { path, at } of taps) {
    if (!at.every(Number.isFinite)) {
      findings.push(imageFound(path, 'trace/tap-not-finite', {}));
    } else if (at[0] < -0.5 || at[1] < -0.5 || at[0] > pixels.width - 0.5 || at[1] > pixels.height - 0.5) {
      const size = { widthPx: pixels.width, heightPx: pixels.height };
      findings.push(imageFound(path, 'trace/tap-outside', { xPx: at[0], yPx: at[1], ...size }));
    }
  }
  if (findings.length > 0) return findings;
  for (let i = 0; i < taps.length; i++) {
    for (let j = i + 1; j < taps.length; j++) {
      const apart = Math.hypot(taps[i].at[0] - taps[j].at[0], taps[i].at[1] - taps[j].at[1]);
      if (apart >= 40) continue;
      findings.push(imageFound(taps[j].path, 'trace/taps-close', { apartPx: apart, from: taps[i].path }));
    }
  }
  return findings;
}

/** Where the blank was lost: at a tap with nothing there (perhaps another picture), or on its way. */
export function lostFinding(
  { leg, bareStop }: { leg: number; bareStop?: number },
  stops: number,
  [xPx, yPx]: readonly [number, number],
): Finding {
  if (bareStop === undefined) {
    return imageFound(leg === 0 && stops === 2 ? 'ends' : 'via', 'trace/lost', { xPx, yPx });
  }
  const inner = bareStop < stops - 1 ? `via[${bareStop - 1}]` : 'ends.tip';
  return imageFound(bareStop === 0 ? 'ends.butt' : inner, 'trace/nothing-at-tap', { xPx, yPx });
}

/** What the builder should look at in a finished trace. */
export function tracedFindings(
  refined: RefinedCentreline,
  points: readonly TracedPoint[],
  pixels: Pixels,
): Finding[] {
  const findings: Finding[] = [];
  if (refined.seenShare < 0.6) {
    findings.push(imageFound('image', 'trace/edges-seldom', { share: refined.seenShare }));
  }
  for (const gap of unseenStretches(refined)) {
    findings.push(imageFound('image', 'trace/stretch-unseen', { ...gap }));
  }
  const { halfPx } = refined;
  if (halfPx[halfPx.length - 1] > 1.4 * halfPx[0]) {
    findings.push(imageFound('ends', 'trace/ends-swapped', {}));
  }
  const border = 2;
  const touches = points
    .slice(3, -3)
    .some(
      ({ px: [x, y] }) => x < border || y < border || x > pixels.width - border || y > pixels.height - border,
    );
  if (touches) findings.push(imageFound('image', 'trace/leaves-picture', {}));
  findings.push(...atEdge(points, pixels));
  const worst = Math.max(...pointsSeen(points).map((point) => point.sigmaM));
  if (worst > 0.012) findings.push(imageFound('marks', 'trace/marks-vague', { plusMinusM: worst }));
  return findings;
}

/** Still blanks look at most 0.1 px wider at their tips than their taper says (docs/three-pictures.md). */
const leastBlurPx = 0.9;

export function blurFindings(blurPx: number, points: readonly TracedPoint[]): Finding[] {
  if (blurPx < leastBlurPx) return [];
  const [before, tip] = [points[points.length - 5], points[points.length - 1]];
  const apartPx = Math.hypot(tip.px[0] - before.px[0], tip.px[1] - before.px[1]);
  const perPx = Math.hypot(tip.xM - before.xM, tip.yM - before.yM) / apartPx;
  return [imageFound('image', 'trace/tip-blurred', { widerM: blurPx * perPx })];
}

/** An end within a hundredth of the picture's edge: the blank may go on beyond it. */
function atEdge(points: readonly TracedPoint[], pixels: Pixels): Finding[] {
  const near = 0.01 * Math.max(pixels.width, pixels.height);
  const ends = [
    { path: 'ends.butt', name: 'butt', px: points[0].px },
    { path: 'ends.tip', name: 'tip', px: points[points.length - 1].px },
  ];
  return ends
    .filter(
      ({ px: [x, y] }) => x < near || y < near || x > pixels.width - 1 - near || y > pixels.height - 1 - near,
    )
    .map(({ path, name }) => imageFound(path, 'trace/end-at-edge', { end: name }));
}

type UnseenStretch = ImageKinds['trace/stretch-unseen'];

/** Stretches of more than a twentieth of the length without either edge. */
function unseenStretches(refined: RefinedCentreline): UnseenStretch[] {
  const { weight, line } = refined;
  const stretches: UnseenStretch[] = [];
  let start = -1;
  for (let i = 0; i <= weight.length; i++) {
    if (i < weight.length && weight[i] <= 0.1) {
      if (start < 0) start = i;
      continue;
    }
    if (start >= 0 && i - start > weight.length / 20) {
      const middle = (start + i) >> 1;
      const percent = (row: number): number => Math.round((100 * row) / (weight.length - 1));
      stretches.push({
        fromPercent: percent(start),
        toPercent: percent(i - 1),
        xPx: Math.round(line.x[middle]),
        yPx: Math.round(line.y[middle]),
      });
    }
    start = -1;
  }
  return stretches;
}
