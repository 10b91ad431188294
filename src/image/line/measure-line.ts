/**
 * Rings and line beside a traced blank: from taps on the rings to the line's direction in every span, the line
 * angle at every ring, and the rings' places.
 *
 * A ring's place is where its two spans of line say, square to the line, and where it was tapped, along it: lines
 * that nearly continue each other fix a ring across but not along.
 */
import type { Point } from '../camera/homography.ts';
import type { Pixels } from '../pixels.ts';
import { type SpanLine, spanLine } from './span-strip.ts';

export interface LineRequest {
  /** Taps on the rings, tip-top first or last, in order along the line; two at least. */
  ringsPx: readonly (readonly [number, number])[];
  /** From the marks: picture to the blank's plane and back. */
  plane: { toPlane(px: Point): Point; toPixel(atM: Point): Point };
  /** The traced blank, so that its own edges are not taken for the line. */
  blank?: readonly { px: readonly [number, number]; halfWidthPx: number }[];
  /** Standard deviation of a tap. Default 3. */
  tapSigmaPx?: number;
}

export interface MeasuredSpan {
  /** Direction of the line in the plane, counter-clockwise from +x, from this ring to the next. */
  angleRad: number;
  sigmaRad: number;
  /** False where no line was seen between the rings; the angle is then that of the taps. */
  seen: boolean;
  seenShare: number;
}

export interface MeasuredRing {
  centrePx: [number, number];
  xM: number;
  yM: number;
  /** Standard errors square to the line and along it, pixels. */
  acrossSigmaPx: number;
  alongSigmaPx: number;
  /** Angle between the line before and after, positive; undefined at the first and the last ring. */
  lineAngleRad?: number;
  lineAngleSigmaRad?: number;
}

export interface MeasuredLine {
  rings: MeasuredRing[];
  /** One fewer than rings. */
  spans: MeasuredSpan[];
}

export function measureLine(request: LineRequest, pixels: Pixels): MeasuredLine {
  const { plane, tapSigmaPx = 3 } = request;
  const taps = request.ringsPx.map(([x, y]) => ({ x, y }));
  const isHidden = hiddenBy(request.blank ?? []);
  const found = taps.slice(1).map((to, i) => {
    const chord = chordOf(taps[i], to, plane);
    return { chord, line: spanLine(pixels, chord, isHidden) };
  });
  const spans = found.map(({ chord, line }) => spanOf(chord, line, plane, tapSigmaPx));
  const rings = taps.map((tap, i) => {
    const before = i > 0 ? endOn(found[i - 1], true) : undefined;
    const after = i < found.length ? endOn(found[i], false) : undefined;
    const ring = ringOf(
      tap,
      [before, after].filter((one) => one !== undefined),
      tapSigmaPx,
      plane,
    );
    return i > 0 && i < found.length ? { ...ring, ...angleBetween(spans[i - 1], spans[i]) } : ring;
  });
  return { rings, spans };
}

/** Places two pixels apart along what is straight in the plane. */
function chordOf(from: Point, to: Point, plane: LineRequest['plane']): Point[] {
  const a = plane.toPlane(from);
  const b = plane.toPlane(to);
  const count = Math.max(2, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 2));
  return Array.from({ length: count + 1 }, (_, i) =>
    plane.toPixel({ x: a.x + ((b.x - a.x) * i) / count, y: a.y + ((b.y - a.y) * i) / count }),
  );
}

/** Within the blank's half-width and 5 px of its middle, where its edge still answers, by a grid of its places. */
function hiddenBy(blank: NonNullable<LineRequest['blank']>): (x: number, y: number) => boolean {
  const cell = 16;
  const cells = new Map<string, number[]>();
  const keyOf = (i: number, j: number): string => `${i},${j}`;
  for (let k = 0; k + 1 < blank.length; k++) {
    const [ax, ay] = blank[k].px;
    const [bx, by] = blank[k + 1].px;
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / cell));
    for (let s = 0; s <= steps; s++) {
      const i = Math.floor((ax + ((bx - ax) * s) / steps) / cell);
      const j = Math.floor((ay + ((by - ay) * s) / steps) / cell);
      for (let di = -1; di <= 1; di++) {
        for (let dj = -1; dj <= 1; dj++) {
          const list = cells.get(keyOf(i + di, j + dj)) ?? [];
          if (!list.includes(k)) list.push(k);
          cells.set(keyOf(i + di, j + dj), list);
        }
      }
    }
  }
  return (x, y) =>
    (cells.get(keyOf(Math.floor(x / cell), Math.floor(y / cell))) ?? []).some((k) => {
      const [ax, ay] = blank[k].px;
      const dx = blank[k + 1].px[0] - ax;
      const dy = blank[k + 1].px[1] - ay;
      const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x - ax - share * dx, y - ay - share * dy) < blank[k].halfWidthPx + 5;
    });
}

interface FoundSpan {
  chord: readonly Point[];
  line: SpanLine | undefined;
}

interface OnLine {
  at: Point;
  normal: Point;
  sigmaPx: number;
}

/** Where the span's line passes its end, with the normal there. */
function endOn({ chord, line }: FoundSpan, atEnd: boolean): OnLine | undefined {
  if (line === undefined) return undefined;
  const [a, b] = atEnd ? [chord[chord.length - 2], chord[chord.length - 1]] : [chord[0], chord[1]];
  const norm = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const normal = { x: -(b.y - a.y) / norm, y: (b.x - a.x) / norm };
  const base = atEnd ? b : a;
  const off = atEnd ? line.endPx : line.startPx;
  return { at: { x: base.x + off * normal.x, y: base.y + off * normal.y }, normal, sigmaPx: line.sigmaPx };
}

function spanOf(
  chord: readonly Point[],
  line: SpanLine | undefined,
  plane: LineRequest['plane'],
  tapSigmaPx: number,
): MeasuredSpan {
  const lengthPx = Math.hypot(chord[chord.length - 1].x - chord[0].x, chord[chord.length - 1].y - chord[0].y);
  const from = plane.toPlane(endOn({ chord, line }, false)?.at ?? chord[0]);
  const to = plane.toPlane(endOn({ chord, line }, true)?.at ?? chord[chord.length - 1]);
  return {
    angleRad: Math.atan2(to.y - from.y, to.x - from.x),
    sigmaRad: (Math.SQRT2 * (line?.sigmaPx ?? tapSigmaPx)) / Math.max(1, lengthPx),
    seen: line !== undefined,
    seenShare: line?.seenShare ?? 0,
  };
}

/** Most probable place: the tap with its error, and the distance off each line with its own. */
function ringOf(
  tap: Point,
  lines: readonly OnLine[],
  tapSigmaPx: number,
  plane: LineRequest['plane'],
): MeasuredRing {
  const w = 1 / (tapSigmaPx * tapSigmaPx);
  let [xx, xy, yy, rx, ry] = [w, 0, w, w * tap.x, w * tap.y];
  for (const { at, normal, sigmaPx } of lines) {
    const weight = 1 / (sigmaPx * sigmaPx + 0.01);
    const off = at.x * normal.x + at.y * normal.y;
    xx += weight * normal.x * normal.x;
    xy += weight * normal.x * normal.y;
    yy += weight * normal.y * normal.y;
    rx += weight * normal.x * off;
    ry += weight * normal.y * off;
  }
  const determinant = xx * yy - xy * xy;
  const centre = { x: (rx * yy - ry * xy) / determinant, y: (xx * ry - xy * rx) / determinant };
  const atM = plane.toPlane(centre);
  const middle = (xx + yy) / 2;
  const spread = Math.hypot((xx - yy) / 2, xy);
  return {
    centrePx: [centre.x, centre.y],
    xM: atM.x,
    yM: atM.y,
    acrossSigmaPx: 1 / Math.sqrt(middle + spread),
    alongSigmaPx: 1 / Math.sqrt(Math.max(w, middle - spread)),
  };
}

function angleBetween(before: MeasuredSpan, after: MeasuredSpan) {
  const turn = after.angleRad - before.angleRad;
  return {
    lineAngleRad: Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))),
    lineAngleSigmaRad: Math.hypot(before.sigmaRad, after.sigmaRad),
  };
}
