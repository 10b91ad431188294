import type { Finding } from '../../engine/finding.ts';
import { said } from '../../engine/finding.ts';
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
      findings.push(said(path, 'must be two finite numbers, [x, y] in pixels'));
    } else if (at[0] < -0.5 || at[1] < -0.5 || at[0] > pixels.width - 0.5 || at[1] > pixels.height - 0.5) {
      findings.push(
        said(
          path,
          `(${at[0]}, ${at[1]}) lies outside the picture of ${pixels.width} × ${pixels.height} px; ` +
            'tap a place inside it, or take the picture again with the whole blank in it',
        ),
      );
    }
  }
  if (findings.length > 0) return findings;
  for (let i = 0; i < taps.length; i++) {
    for (let j = i + 1; j < taps.length; j++) {
      const apart = Math.hypot(taps[i].at[0] - taps[j].at[0], taps[i].at[1] - taps[j].at[1]);
      if (apart >= 40) continue;
      findings.push(
        said(
          taps[j].path,
          `lies ${apart.toFixed(0)} px from ${taps[i].path}; at least 40 px are needed between two taps`,
        ),
      );
    }
  }
  return findings;
}

/** Where the blank was lost: at a tap with nothing there (perhaps another picture), or on its way. */
export function lostFinding(
  { leg, bareStop }: { leg: number; bareStop?: number },
  stops: number,
  [x, y]: readonly [number, number],
): Finding {
  if (bareStop === undefined) {
    const message = `the blank could not be followed beyond about pixel (${x}, ${y}); add a point on it (via) past there`;
    return said(leg === 0 && stops === 2 ? 'ends' : 'via', message);
  }
  const inner = bareStop < stops - 1 ? `via[${bareStop - 1}]` : 'ends.tip';
  return said(
    bareStop === 0 ? 'ends.butt' : inner,
    `nothing long and thin is seen where it was tapped, near pixel (${x}, ${y}); tap it again on the blank, or ` +
      'take the picture that shows the rod, before a plainer wall',
  );
}

/** What the builder should look at in a finished trace. */
export function tracedFindings(
  refined: RefinedCentreline,
  points: readonly TracedPoint[],
  pixels: Pixels,
): Finding[] {
  const findings: Finding[] = [];
  if (refined.seenShare < 0.6) {
    const share = Math.round(100 * refined.seenShare);
    findings.push(
      said(
        'image',
        `both edges of the blank were seen along only ${share} % of the way; check the drawn curve, add points ` +
          'between (via), or photograph it against a plainer wall',
      ),
    );
  }
  for (const gap of unseenStretches(refined)) {
    findings.push(
      said(
        'image',
        `between ${gap.from} % and ${gap.to} % of the way from the butt, near pixel (${gap.x}, ${gap.y}), the ` +
          'blank hardly stands out from what is behind it; the curve there is bridged, check it',
      ),
    );
  }
  const { halfPx } = refined;
  if (halfPx[halfPx.length - 1] > 1.4 * halfPx[0]) {
    findings.push(said('ends', 'the tip end is thicker than the butt end: butt and tip look swapped'));
  }
  const border = 2;
  const touches = points
    .slice(3, -3)
    .some(
      ({ px: [x, y] }) => x < border || y < border || x > pixels.width - border || y > pixels.height - border,
    );
  if (touches) {
    findings.push(
      said(
        'image',
        'the blank leaves the picture; take it again from further back so that butt and tip are both in it',
      ),
    );
  }
  findings.push(...atEdge(points, pixels));
  const worst = Math.max(...points.map((point) => point.sigmaM));
  if (worst > 0.012) {
    findings.push(
      said(
        'marks',
        `the marks fix the blank’s place only to ±${(worst * 1e3).toFixed(0)} mm at its worst; add marks, best so ` +
          'that they surround the whole blank',
      ),
    );
  }
  return findings;
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
    .map(({ path, name }) =>
      said(
        path,
        `the ${name} was tapped at the edge of the picture; if the blank goes on beyond it, take the picture again ` +
          'from further back, with butt and tip in it',
      ),
    );
}

/** Stretches of more than a twentieth of the length without either edge. */
function unseenStretches(refined: RefinedCentreline): { from: number; to: number; x: number; y: number }[] {
  const { weight, line } = refined;
  const stretches: { from: number; to: number; x: number; y: number }[] = [];
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
        from: percent(start),
        to: percent(i - 1),
        x: Math.round(line.x[middle]),
        y: Math.round(line.y[middle]),
      });
    }
    start = -1;
  }
  return stretches;
}
