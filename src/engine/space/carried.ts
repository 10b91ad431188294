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
  state: SpaceState,
): void {
  const { place, meanScaleM } = state;
  const over = 1 / lengthM;
  const at = 3 * e;
  const scale = meanScaleM[e];
  for (let i = 0; i < 3; i++) carried[i] = over * (place[at + i] - place[at - 3 + i]);
  const along = x * carried[0] + y * carried[1] + z * carried[2];
  carried[3] = x - along * carried[0];
  carried[4] = y - along * carried[1];
  carried[5] = z - along * carried[2];
  carried[6] = scale;
  carried[7] = factor * scale;
  carried[8] = factor * scale * scale * over;
  carried[9] = carried[8] * along;
  addEnd(e, 0, state);
  if (e === 1) return;
  addEnd(e - 1, 4, state);
  addBetweenEnds(e, state);
}

/** Of the element last read: u 3, n 3, h/S, λ h/S, λ h/S², λ h (N·u)/S². */
const carried = new Float64Array(10);
/** Of its tip end, then its butt end: u along d1, d2, and n along d1, d2. */
const ends = new Float64Array(8);

function addEnd(node: number, slot: number, { frame, loadGradient, hessian }: SpaceState): void {
  const f = 9 * node;
  const ux = carried[0];
  const uy = carried[1];
  const uz = carried[2];
  const nx = carried[3];
  const ny = carried[4];
  const nz = carried[5];
  const u1 = ux * frame[f] + uy * frame[f + 1] + uz * frame[f + 2];
  const u2 = ux * frame[f + 3] + uy * frame[f + 4] + uz * frame[f + 5];
  const n1 = nx * frame[f] + ny * frame[f + 1] + nz * frame[f + 2];
  const n2 = nx * frame[f + 3] + ny * frame[f + 4] + nz * frame[f + 5];
  const first = carried[7];
  const straight = first * (nx * frame[f + 6] + ny * frame[f + 7] + nz * frame[f + 8]);
  const second = carried[8];
  const whole = carried[9];
  ends[slot] = u1;
  ends[slot + 1] = u2;
  ends[slot + 2] = n1;
  ends[slot + 3] = n2;
  loadGradient[3 * node - 3] += carried[6] * n2;
  loadGradient[3 * node - 2] -= carried[6] * n1;
  const { diagonal } = hessian;
  const d = 6 * node - 6;
  diagonal[d] += straight + 2 * second * u2 * n2 + whole * (1 - u2 * u2);
  diagonal[d + 1] += straight + 2 * second * u1 * n1 + whole * (1 - u1 * u1);
  diagonal[d + 3] -= second * (u1 * n2 + u2 * n1) - whole * u1 * u2;
  diagonal[d + 4] -= 0.5 * first * n1;
  diagonal[d + 5] -= 0.5 * first * n2;
}

function addBetweenEnds(e: number, { frame, hessian: { off } }: SpaceState): void {
  const o = 9 * e - 9;
  for (let r = 0; r < 2; r++) {
    const b = 9 * e + 3 * (1 - r);
    for (let c = 0; c < 2; c++) {
      const a = 9 * e - 9 + 3 * (1 - c);
      const same = frame[a] * frame[b] + frame[a + 1] * frame[b + 1] + frame[a + 2] * frame[b + 2];
      const ub = ends[1 - r];
      const ua = ends[5 - c];
      const value = carried[8] * (ub * ends[7 - c] + ends[3 - r] * ua) + carried[9] * (same - ub * ua);
      off[o + 3 * r + c] += r === c ? value : -value;
    }
  }
}
