/**
 * The marks of a wall looked at in a picture of it: how far each is from where it was measured to be, whether the
 * measured places are too far apart or too near (by the size the rings were printed in), and how well a place between
 * the marks is told.
 */
import type { Finding } from '../../engine/finding.ts';
import type { Refused } from '../finding.ts';
import type { FoundMark } from '../marks/find-marks.ts';
import { type PlaneOfMarks, planeOfMarks } from './plane-of-marks.ts';

type Pair = readonly [number, number];

export interface WallChecked {
  status: 'converged';
  marks: { number: number; offM: [number, number]; leftOut: boolean }[];
  /** The places are farther apart than the rings' size says, as a share; half its 95 % range. */
  scale: { tooFarApart: number; plusMinus: number };
  /** Of the worst place between the marks, 95 of 100. */
  goodToM: number;
  findings: Finding[];
}

/** A ring's edge is read so far inside or outside of the printed one, all alike: half a pixel in painted pictures. */
const edgePx = 0.8;
/** Places looked at between the marks, each way. */
const steps = 12;

export function checkWall(
  found: readonly FoundMark[],
  placeOf: (number: number) => Pair | undefined,
  picture: { widthPx: number; heightPx: number },
  ringRadiusM: number,
): WallChecked | Refused {
  const seen = found.flatMap((mark) => {
    const atM = placeOf(mark.number);
    return atM ? [{ mark, px: mark.centrePx, atM }] : [];
  });
  const plane = planeOfMarks({ marks: seen }, picture);
  if (plane.status === 'refused') return plane;
  return {
    status: 'converged',
    marks: seen.map(({ mark: { number }, px, atM }, i) => {
      const at = plane.toPlane({ x: px[0], y: px[1] });
      return { number, offM: [at.x - atM[0], at.y - atM[1]], leftOut: plane.leftOut.includes(i) };
    }),
    scale: scaleOf(
      plane,
      seen.map(({ mark }) => mark),
      ringRadiusM,
    ),
    goodToM: goodTo(
      plane,
      seen.map(({ atM }) => atM),
    ),
    findings: plane.findings,
  };
}

/** A ring that looks larger than it was printed stands among places too far apart. */
function scaleOf(
  plane: PlaneOfMarks,
  marks: readonly FoundMark[],
  ringRadiusM: number,
): WallChecked['scale'] {
  const shares = marks.map(({ centrePx, cornersPx }) => {
    const middle = plane.toPlane({ x: centrePx[0], y: centrePx[1] });
    const radii = cornersPx.map(([x, y]) => {
      const at = plane.toPlane({ x, y });
      return Math.hypot(at.x - middle.x, at.y - middle.y);
    });
    return radii.reduce((sum, radius) => sum + radius, 0) / radii.length / ringRadiusM;
  });
  const radiusPx = marks.reduce((sum, mark) => sum + mark.radiusPx, 0) / marks.length;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return { tooFarApart: mean - 1, plusMinus: edgePx / radiusPx };
}

function goodTo(plane: PlaneOfMarks, places: readonly Pair[]): number {
  const range = (axis: 0 | 1) => places.map((place) => place[axis]);
  const [left, right, low, high] = [
    Math.min(...range(0)),
    Math.max(...range(0)),
    Math.min(...range(1)),
    Math.max(...range(1)),
  ];
  let worst = 0;
  for (let i = 0; i <= steps; i++) {
    for (let j = 0; j <= steps; j++) {
      const at = { x: left + ((right - left) * i) / steps, y: low + ((high - low) * j) / steps };
      worst = Math.max(worst, 1.96 * plane.sigmaM(plane.toPixel(at)));
    }
  }
  return worst;
}
