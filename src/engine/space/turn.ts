/**
 * Turns as unit quaternions (scalar first), four to a node in one array, and the frame each gives: d1, d2 across
 * the axis and t along it, nine to a node. No angle is singular. Rotation vectors are in the turned axes.
 */

/** q ← q · exp(½ w), brought back to length one. */
export function turnBy(q: Float64Array, at: number, x: number, y: number, z: number): void {
  const square = x * x + y * y + z * z;
  // sin(a)/a and cos(a) of a = |w|/2; the series is exact to rounding where it is used
  const quarter = 0.25 * square;
  const small = quarter < 1e-4;
  const half = small ? 0 : Math.sqrt(quarter);
  const c = small ? 1 - quarter * (0.5 - quarter / 24) : Math.cos(half);
  const s = 0.5 * (small ? 1 - quarter * (1 / 6 - quarter / 120) : Math.sin(half) / half);
  const a = q[at];
  const b = q[at + 1];
  const d = q[at + 2];
  const e = q[at + 3];
  const p = s * x;
  const u = s * y;
  const v = s * z;
  const w0 = c * a - b * p - d * u - e * v;
  const w1 = c * b + a * p + d * v - e * u;
  const w2 = c * d + a * u + e * p - b * v;
  const w3 = c * e + a * v + b * u - d * p;
  const one = 1.5 - 0.5 * (w0 * w0 + w1 * w1 + w2 * w2 + w3 * w3);
  q[at] = one * w0;
  q[at + 1] = one * w1;
  q[at + 2] = one * w2;
  q[at + 3] = one * w3;
}

/** The quaternion of a turn by `angleRad` about a unit axis. */
export function turnAbout(
  x: number,
  y: number,
  z: number,
  angleRad: number,
): [number, number, number, number] {
  const s = Math.sin(0.5 * angleRad);
  return [Math.cos(0.5 * angleRad), s * x, s * y, s * z];
}

export function product(
  [a, b, c, d]: readonly number[],
  [e, f, g, h]: readonly number[],
): [number, number, number, number] {
  return [
    a * e - b * f - c * g - d * h,
    a * f + b * e + c * h - d * g,
    a * g + c * e + d * f - b * h,
    a * h + d * e + b * g - c * f,
  ];
}

/** The frame (d1, d2, t) of the quaternion at q[4 j], written to frame[9 j]. */
export function frameOf(q: Float64Array, j: number, frame: Float64Array): void {
  const at = 4 * j;
  const a = q[at];
  const b = q[at + 1];
  const c = q[at + 2];
  const d = q[at + 3];
  const f = 9 * j;
  frame[f] = 1 - 2 * (c * c + d * d);
  frame[f + 1] = 2 * (b * c + a * d);
  frame[f + 2] = 2 * (b * d - a * c);
  frame[f + 3] = 2 * (b * c - a * d);
  frame[f + 4] = 1 - 2 * (b * b + d * d);
  frame[f + 5] = 2 * (c * d + a * b);
  frame[f + 6] = 2 * (b * d + a * c);
  frame[f + 7] = 2 * (c * d - a * b);
  frame[f + 8] = 1 - 2 * (b * b + c * c);
}

/** Every node but the clamped one turned from `from` by `share` of its three parts of `turns`, into `to`. */
export function moveFrom(from: Float64Array, turns: Float64Array, share: number, to: Float64Array): void {
  if (from !== to) to.set(from);
  for (let i = 0; i < turns.length; i += 3) {
    turnBy(to, (4 * i) / 3 + 4, share * turns[i], share * turns[i + 1], share * turns[i + 2]);
  }
}

export function largestPart(turns: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < turns.length; i++) largest = Math.max(largest, Math.abs(turns[i]));
  return largest;
}
