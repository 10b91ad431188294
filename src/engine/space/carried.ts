/** What the force carried across an element does to the turns of its two ends. */
import type { SpaceMesh } from './mesh-in-space.ts';
import type { SpaceState } from './state.ts';

/** Gradient of -h N·u by the turns of the two ends. */
export function addCarriedGradient(
  e: number,
  x: number,
  y: number,
  z: number,
  mesh: SpaceMesh,
  { frame, place, meanScaleM, loadGradient }: SpaceState,
): void {
  const over = 1 / mesh.lengthM[e] ** 2;
  const at = 3 * e;
  const ux = place[at] - place[at - 3];
  const uy = place[at + 1] - place[at - 2];
  const uz = place[at + 2] - place[at - 1];
  const along = over * (x * ux + y * uy + z * uz);
  const scale = meanScaleM[e];
  const nx = scale * (x - along * ux);
  const ny = scale * (y - along * uy);
  const nz = scale * (z - along * uz);
  const b = 9 * e;
  loadGradient[at - 3] += nx * frame[b + 3] + ny * frame[b + 4] + nz * frame[b + 5];
  loadGradient[at - 2] -= nx * frame[b] + ny * frame[b + 1] + nz * frame[b + 2];
  if (e === 1) return;
  const a = b - 9;
  loadGradient[at - 6] += nx * frame[a + 3] + ny * frame[a + 4] + nz * frame[a + 5];
  loadGradient[at - 5] -= nx * frame[a] + ny * frame[a + 1] + nz * frame[a + 2];
}

/**
 * Gradient and Hessian of -h N·u, u the mean direction of the element, N the force it carries: with s the sum of the
 * two ends' directions, S its length and n = N less its part along u,
 *   N·d²u = n·d²s/S - 2 (u·ds)(n·ds)/S² - (N·u)(|ds|² - (u·ds)²)/S².
 */
export function addCarried(
  e: number,
  x: number,
  y: number,
  z: number,
  lengthM: number,
  factor: number,
  { frame, place, meanScaleM, loadGradient, hessian }: SpaceState,
): void {
  const over = 1 / lengthM;
  const at = 3 * e;
  const ux = over * (place[at] - place[at - 3]);
  const uy = over * (place[at + 1] - place[at - 2]);
  const uz = over * (place[at + 2] - place[at - 1]);
  const scale = meanScaleM[e];
  const along = x * ux + y * uy + z * uz;
  const nx = x - along * ux;
  const ny = y - along * uy;
  const nz = z - along * uz;
  const b = 9 * e;
  const b11 = frame[b];
  const b12 = frame[b + 1];
  const b13 = frame[b + 2];
  const b21 = frame[b + 3];
  const b22 = frame[b + 4];
  const b23 = frame[b + 5];
  const nb1 = nx * b11 + ny * b12 + nz * b13;
  const nb2 = nx * b21 + ny * b22 + nz * b23;
  const nbt = nx * frame[b + 6] + ny * frame[b + 7] + nz * frame[b + 8];
  const ub1 = ux * b11 + uy * b12 + uz * b13;
  const ub2 = ux * b21 + uy * b22 + uz * b23;
  loadGradient[at - 3] += scale * nb2;
  loadGradient[at - 2] -= scale * nb1;
  const first = factor * scale;
  const second = (factor * scale * scale) / lengthM;
  const whole = second * along;
  const { diagonal, off } = hessian;
  const d = 6 * e - 6;
  diagonal[d] += first * nbt + 2 * second * ub2 * nb2 + whole * (1 - ub2 * ub2);
  diagonal[d + 1] += first * nbt + 2 * second * ub1 * nb1 + whole * (1 - ub1 * ub1);
  diagonal[d + 3] -= second * (ub1 * nb2 + ub2 * nb1) - whole * ub1 * ub2;
  diagonal[d + 4] -= 0.5 * first * nb1;
  diagonal[d + 5] -= 0.5 * first * nb2;
  if (e === 1) return;
  const a = b - 9;
  const a11 = frame[a];
  const a12 = frame[a + 1];
  const a13 = frame[a + 2];
  const a21 = frame[a + 3];
  const a22 = frame[a + 4];
  const a23 = frame[a + 5];
  const na1 = nx * a11 + ny * a12 + nz * a13;
  const na2 = nx * a21 + ny * a22 + nz * a23;
  const nat = nx * frame[a + 6] + ny * frame[a + 7] + nz * frame[a + 8];
  const ua1 = ux * a11 + uy * a12 + uz * a13;
  const ua2 = ux * a21 + uy * a22 + uz * a23;
  loadGradient[at - 6] += scale * na2;
  loadGradient[at - 5] -= scale * na1;
  diagonal[d - 6] += first * nat + 2 * second * ua2 * na2 + whole * (1 - ua2 * ua2);
  diagonal[d - 5] += first * nat + 2 * second * ua1 * na1 + whole * (1 - ua1 * ua1);
  diagonal[d - 3] -= second * (ua1 * na2 + ua2 * na1) - whole * ua1 * ua2;
  diagonal[d - 2] -= 0.5 * first * na1;
  diagonal[d - 1] -= 0.5 * first * na2;
  const o = 9 * e - 9;
  const g11 = a11 * b11 + a12 * b12 + a13 * b13;
  const g12 = a21 * b11 + a22 * b12 + a23 * b13;
  const g21 = a11 * b21 + a12 * b22 + a13 * b23;
  const g22 = a21 * b21 + a22 * b22 + a23 * b23;
  off[o] += second * (ub2 * na2 + nb2 * ua2) + whole * (g22 - ub2 * ua2);
  off[o + 1] -= second * (ub2 * na1 + nb2 * ua1) + whole * (g21 - ub2 * ua1);
  off[o + 3] -= second * (ub1 * na2 + nb1 * ua2) + whole * (g12 - ub1 * ua2);
  off[o + 4] += second * (ub1 * na1 + nb1 * ua1) + whole * (g11 - ub1 * ua1);
}
