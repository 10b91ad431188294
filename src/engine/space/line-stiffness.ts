/** What a line under tension adds to the Hessian: its spans turn as the rings that hold them move. */
import type { SpaceMesh } from './mesh-in-space.ts';
import type { SpaceLine, SpaceState } from './state.ts';

/** Per span T/ℓ times the squares of how its vector moves across itself: two columns. */
export function addLineStiffness(mesh: SpaceMesh, line: SpaceLine, factor: number, state: SpaceState): void {
  const { hessian, spanLengthM } = state;
  const rings = mesh.ringNode.length;
  for (let k = 0; k < rings; k++) {
    const weight = (factor * line.spanTensionN[k]) / spanLengthM[k];
    const high = mesh.ringNode[k];
    if (!(weight > 0) || high === 0) break;
    const low = k + 1 < rings ? mesh.ringNode[k + 1] : 0;
    const s = hessian.spanCount++;
    hessian.weight[s] = weight;
    hessian.last[s] = high - 1;
    hessian.first[s] = low - 1;
    for (let column = 0; column < 2; column++) {
      const across = state.across.subarray(6 * k + 3 * column, 6 * k + 3 * column + 3);
      addColumn(mesh, line, state, { k, high, low, s, column }, across);
    }
  }
}

interface SpanColumn {
  k: number;
  high: number;
  low: number;
  s: number;
  column: number;
}

function addColumn(
  mesh: SpaceMesh,
  line: SpaceLine,
  state: SpaceState,
  { k, high, low, s, column }: SpanColumn,
  across: Float64Array,
): void {
  const { frame, place, meanScaleM, hessian } = state;
  const { inner, lowEnd } = hessian;
  const x = across[0];
  const y = across[1];
  const z = across[2];
  const top = 6 * (high - 1) + 3 * column;
  ringColumn(frame, high, line.ringOffsetM, k, across, 1, inner, top);
  let [above1, above2] = [inner[top], inner[top + 1]];
  let third = inner[top + 2];
  for (let e = high; e > low; e--) {
    const over = 1 / mesh.lengthM[e] ** 2;
    const p = 3 * e;
    const hx = place[p] - place[p - 3];
    const hy = place[p + 1] - place[p - 2];
    const hz = place[p + 2] - place[p - 1];
    const along = over * (x * hx + y * hy + z * hz);
    const scale = meanScaleM[e];
    const cx = scale * (x - along * hx);
    const cy = scale * (y - along * hy);
    const cz = scale * (z - along * hz);
    const b = 9 * e;
    const to = 6 * (e - 1) + 3 * column;
    inner[to] = above1 - (cx * frame[b + 3] + cy * frame[b + 4] + cz * frame[b + 5]);
    inner[to + 1] = above2 + cx * frame[b] + cy * frame[b + 1] + cz * frame[b + 2];
    inner[to + 2] = third;
    third = 0;
    above1 = -(cx * frame[b - 6] + cy * frame[b - 5] + cz * frame[b - 4]);
    above2 = cx * frame[b - 9] + cy * frame[b - 8] + cz * frame[b - 7];
  }
  if (low === 0) return;
  const end = 6 * s + 3 * column;
  ringColumn(frame, low, line.ringOffsetM, k + 1, across, -1, lowEnd, end);
  lowEnd[end] += above1;
  lowEnd[end + 1] += above2;
}

/** How a ring's centre moves along `across` for turns of its node: a × B in the node's axes. */
function ringColumn(
  frame: Float64Array,
  node: number,
  offset: Float64Array,
  ring: number,
  across: Float64Array,
  sign: number,
  to: Float64Array,
  at: number,
): void {
  const f = 9 * node;
  const x = across[0];
  const y = across[1];
  const z = across[2];
  const a1 = sign * offset[2 * ring];
  const a2 = sign * offset[2 * ring + 1];
  const b3 = x * frame[f + 6] + y * frame[f + 7] + z * frame[f + 8];
  to[at] = a2 * b3;
  to[at + 1] = -a1 * b3;
  to[at + 2] =
    a1 * (x * frame[f + 3] + y * frame[f + 4] + z * frame[f + 5]) -
    a2 * (x * frame[f] + y * frame[f + 1] + z * frame[f + 2]);
}
