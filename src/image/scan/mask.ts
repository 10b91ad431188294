/** Sets of pixels: patches that hang together, filling, opening, and distances to the outside. */

export interface Mask {
  width: number;
  height: number;
  /** 1 inside, 0 outside. */
  inside: Uint8Array;
}

export interface Patch {
  left: number;
  top: number;
  right: number;
  bottom: number;
  area: number;
  /** Any of its pixels. */
  seed: number;
}

/** The patches of a mask, eight-connected; `labels` holds 1 + the patch's index. */
export function patchesOf(mask: Mask): { patches: Patch[]; labels: Int32Array } {
  const { width, height, inside } = mask;
  const labels = new Int32Array(width * height);
  const patches: Patch[] = [];
  const stack: number[] = [];
  for (let start = 0; start < inside.length; start++) {
    if (!inside[start] || labels[start]) continue;
    const label = patches.length + 1;
    const patch: Patch = { left: width, top: height, right: 0, bottom: 0, area: 0, seed: start };
    labels[start] = label;
    stack.push(start);
    while (stack.length > 0) {
      const at = stack.pop()!;
      const x = at % width;
      const y = (at - x) / width;
      patch.area++;
      if (x < patch.left) patch.left = x;
      if (x > patch.right) patch.right = x;
      if (y < patch.top) patch.top = y;
      if (y > patch.bottom) patch.bottom = y;
      for (let py = Math.max(0, y - 1); py <= Math.min(height - 1, y + 1); py++) {
        for (let px = Math.max(0, x - 1); px <= Math.min(width - 1, x + 1); px++) {
          const next = py * width + px;
          if (inside[next] && !labels[next]) {
            labels[next] = label;
            stack.push(next);
          }
        }
      }
    }
    patches.push(patch);
  }
  return { patches, labels };
}

/** Keeps the patch with the most pixels. */
export function largestPatch(mask: Mask): Mask {
  const { patches, labels } = patchesOf(mask);
  let best = 0;
  for (let i = 1; i < patches.length; i++) if (patches[i].area > patches[best].area) best = i;
  return { ...mask, inside: Uint8Array.from(labels, (label) => (label === best + 1 ? 1 : 0)) };
}

/** Fills holes nowhere farther than `mostDepthPx` from their rim: a highlight as bright as the paper. */
export function holesFilled(mask: Mask, mostDepthPx: number): Mask {
  const { width, height } = mask;
  const outside: Mask = { width, height, inside: Uint8Array.from(mask.inside, (value) => 1 - value) };
  const { patches, labels } = patchesOf(outside);
  const depth = depthOf(outside, false);
  const deepest = new Float32Array(patches.length);
  for (let i = 0; i < labels.length; i++) {
    if (labels[i] && depth[i] > deepest[labels[i] - 1]) deepest[labels[i] - 1] = depth[i];
  }
  const fills = patches.map(
    (patch, i) =>
      deepest[i] <= mostDepthPx &&
      patch.left > 0 &&
      patch.top > 0 &&
      patch.right < width - 1 &&
      patch.bottom < height - 1,
  );
  const inside = Uint8Array.from(mask.inside, (value, i) => (value || fills[labels[i] - 1] ? 1 : 0));
  return { width, height, inside };
}

/** Removes what is narrower than twice the radius: hairs, bristles, specks. */
export function opened(mask: Mask, radiusPx: number): Mask {
  const { width, height } = mask;
  const depth = depthOf(mask);
  const core = Uint8Array.from(depth, (value) => (value > radiusPx ? 0 : 1));
  // Distance to the core: the depth of the core's complement.
  const away = depthOf({ width, height, inside: core }, false);
  const inside = Uint8Array.from(mask.inside, (value, i) => (value && away[i] <= radiusPx + 0.5 ? 1 : 0));
  return { width, height, inside };
}

/** Fills what is narrower than twice the radius: slits, notches, the gap a highlight cuts. */
export function closed(mask: Mask, radiusPx: number): Mask {
  const { width, height } = mask;
  const pad = Math.ceil(radiusPx) + 1;
  const wide = width + 2 * pad;
  const free = new Uint8Array(wide * (height + 2 * pad)).fill(1);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) if (mask.inside[y * width + x]) free[(y + pad) * wide + x + pad] = 0;
  }
  const away = depthOf({ width: wide, height: height + 2 * pad, inside: free }, false);
  const grown = Uint8Array.from(away, (value) => (value <= radiusPx ? 1 : 0));
  const depth = depthOf({ width: wide, height: height + 2 * pad, inside: grown }, false);
  const inside = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (mask.inside[i] || depth[(y + pad) * wide + x + pad] > radiusPx) inside[i] = 1;
    }
  }
  return { width, height, inside };
}

/**
 * Distance of each inside pixel's centre to the nearest outside pixel's centre; beyond the border counts as
 * outside unless `borderOutside` is false. Exact Euclidean, in two passes of lower envelopes of parabolas.
 * Source: P. Felzenszwalb and D. Huttenlocher, "Distance transforms of sampled functions", Theory of
 * Computing 8 (2012) 415-428.
 */
export function depthOf(mask: Mask, borderOutside = true): Float32Array {
  const { width, height, inside } = mask;
  const squares = new Float64Array((width + 2) * (height + 2));
  const stride = width + 2;
  if (!borderOutside) squares.fill(1e12);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) squares[(y + 1) * stride + x + 1] = inside[y * width + x] ? 1e12 : 0;
  }
  const line = new Float64Array(Math.max(stride, height + 2));
  for (let x = 0; x < stride; x++) {
    for (let y = 0; y < height + 2; y++) line[y] = squares[y * stride + x];
    const out = envelope(line, height + 2);
    for (let y = 0; y < height + 2; y++) squares[y * stride + x] = out[y];
  }
  const depth = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < stride; x++) line[x] = squares[(y + 1) * stride + x];
    const out = envelope(line, stride);
    for (let x = 0; x < width; x++) depth[y * width + x] = Math.sqrt(out[x + 1]);
  }
  return depth;
}

/** min over q of f(q) + (p − q)², for all p < n. */
function envelope(f: Float64Array, n: number): Float64Array {
  const places = new Int32Array(n);
  const bounds = new Float64Array(n + 1);
  let k = 0;
  bounds[0] = Number.NEGATIVE_INFINITY;
  bounds[1] = Number.POSITIVE_INFINITY;
  for (let q = 1; q < n; q++) {
    let s = meeting(f, q, places[k]);
    while (s <= bounds[k]) {
      k--;
      s = meeting(f, q, places[k]);
    }
    k++;
    places[k] = q;
    bounds[k] = s;
    bounds[k + 1] = Number.POSITIVE_INFINITY;
  }
  const out = new Float64Array(n);
  k = 0;
  for (let p = 0; p < n; p++) {
    while (bounds[k + 1] < p) k++;
    out[p] = f[places[k]] + (p - places[k]) ** 2;
  }
  return out;
}

function meeting(f: Float64Array, q: number, p: number): number {
  return (f[q] + q * q - (f[p] + p * p)) / (2 * q - 2 * p);
}
