/** Least distance between two straight pieces in space (Ericson, Real-Time Collision Detection, 2005, section 5.1.9). */
export type Point = readonly [x: number, y: number, z: number];

export function segmentDistance(a: Point, b: Point, c: Point, d: Point): number {
  const u = difference(b, a);
  const v = difference(d, c);
  const w = difference(a, c);
  const [uu, vv, uv, uw, vw] = [dot(u, u), dot(v, v), dot(u, v), dot(u, w), dot(v, w)];
  const apart = uu * vv - uv * uv;
  // parallel pieces: any place on the first one will do to begin with
  let s = apart > 1e-12 * uu * vv ? clamp((uv * vw - uw * vv) / apart) : 0;
  let t = vv > 0 ? (uv * s + vw) / vv : 0;
  if (t !== clamp(t)) {
    t = clamp(t);
    s = uu > 0 ? clamp((uv * t - uw) / uu) : 0;
  }
  return Math.hypot(...w.map((part, i) => part + s * u[i] - t * v[i]));
}

const clamp = (share: number) => Math.min(1, Math.max(0, share));
const difference = (p: Point, q: Point): [number, number, number] => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Point, q: Point) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
