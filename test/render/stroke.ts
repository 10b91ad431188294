import { blend, type Canvas, type Colour, dim, type Place } from './canvas.ts';

/** A pixel near a curve: its signed distance (positive to the right of travel, y down) and the place along. */
export interface NearPixel {
  pixel: number;
  distancePx: number;
  /** Index into the polyline, with a fraction. */
  along: number;
}

/**
 * Every pixel within `reachPx(along)` of a polyline, each with its nearest place. The polyline should be
 * dense: steps of a few pixels.
 */
export function pixelsNear(
  canvas: Canvas,
  line: readonly Place[],
  reachPx: (along: number) => number,
): NearPixel[] {
  const placeOf = new Int32Array(canvas.width * canvas.height);
  const found: NearPixel[] = [];
  for (let i = 0; i + 1 < line.length; i++) {
    const a = line[i];
    const b = line[i + 1];
    const reach = Math.max(reachPx(i), reachPx(i + 1)) + 1;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const length = Math.hypot(dx, dy) || 1e-9;
    const left = Math.max(0, Math.floor(Math.min(a.x, b.x) - reach));
    const right = Math.min(canvas.width - 1, Math.ceil(Math.max(a.x, b.x) + reach));
    const top = Math.max(0, Math.floor(Math.min(a.y, b.y) - reach));
    const bottom = Math.min(canvas.height - 1, Math.ceil(Math.max(a.y, b.y) + reach));
    for (let y = top; y <= bottom; y++) {
      for (let x = left; x <= right; x++) {
        const share = ((x - a.x) * dx + (y - a.y) * dy) / (length * length);
        // Square ends: beyond the first and last place nothing is painted.
        if ((i === 0 && share < 0) || (i + 2 === line.length && share > 1)) continue;
        const t = Math.min(1, Math.max(0, share));
        const [offX, offY] = [x - a.x - t * dx, y - a.y - t * dy];
        const away = Math.sqrt(offX * offX + offY * offY);
        if (away > reach) continue;
        const pixel = y * canvas.width + x;
        const before = found[placeOf[pixel] - 1];
        if (before && Math.abs(before.distancePx) <= away) continue;
        const side = dx * (y - a.y) - dy * (x - a.x) >= 0 ? 1 : -1;
        if (before) {
          before.distancePx = side * away;
          before.along = i + t;
        } else placeOf[pixel] = found.push({ pixel, distancePx: side * away, along: i + t });
      }
    }
  }
  return found;
}

/** How much of a one-pixel-wide window centred `distance` off the axis lies within ±radius. */
export function coverageAt(distance: number, radius: number): number {
  const from = Math.max(distance - 0.5, -radius);
  const to = Math.min(distance + 0.5, radius);
  return Math.max(0, to - from);
}

/** Paints a flat band along a polyline. */
export function strokeFlat(
  canvas: Canvas,
  line: readonly Place[],
  radiusPx: (along: number) => number,
  colour: Colour,
  opacity = 1,
): void {
  for (const near of pixelsNear(canvas, line, radiusPx)) {
    const cover = coverageAt(near.distancePx, radiusPx(near.along));
    if (cover > 0) blend(canvas, near.pixel, colour, cover * opacity);
  }
}

/** A soft shadow: the band of `radiusPx` seen through a Gaussian penumbra of `sigmaPx`. */
export function strokeShadow(
  canvas: Canvas,
  line: readonly Place[],
  radiusPx: (along: number) => number,
  sigmaPx: number,
  strength: number,
): void {
  for (const near of pixelsNear(canvas, line, (along) => radiusPx(along) + 3 * sigmaPx)) {
    const radius = radiusPx(near.along);
    const share =
      normalBelow((radius - near.distancePx) / sigmaPx) - normalBelow((-radius - near.distancePx) / sigmaPx);
    dim(canvas, near.pixel, 1 - strength * share);
  }
}

/** Standard normal distribution, Abramowitz & Stegun 26.2.17 (error below 1e-7). */
function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const tail =
    (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return x >= 0 ? 1 - tail : tail;
}

export interface TubeLight {
  /** Sideways part of the light's direction, −1..1 along the signed distance. */
  sideways: number;
  ambient: number;
  diffuse: number;
  /** Height of the specular line and its width as a share of the radius. */
  gloss: number;
  glossWidth: number;
}

/** Paints a round tube lit from one side, with a specular line off its middle. */
export function strokeTube(
  canvas: Canvas,
  line: readonly Place[],
  radiusPx: (along: number) => number,
  colourAt: (along: number) => Colour,
  lamp: TubeLight,
): void {
  const towards = Math.sqrt(Math.max(0, 1 - lamp.sideways * lamp.sideways));
  for (const near of pixelsNear(canvas, line, radiusPx)) {
    const radius = radiusPx(near.along);
    const cover = coverageAt(near.distancePx, radius);
    if (cover <= 0) continue;
    const across = Math.max(-1, Math.min(1, near.distancePx / radius));
    const facing = across * lamp.sideways + Math.sqrt(1 - across * across) * towards;
    const shade = lamp.ambient + lamp.diffuse * Math.max(0, facing);
    const off = (across - lamp.sideways * 0.5) / lamp.glossWidth;
    const gloss = lamp.gloss * Math.exp(-off * off);
    const base = colourAt(near.along);
    const colour = {
      red: base.red * shade + gloss,
      green: base.green * shade + gloss,
      blue: base.blue * shade + gloss,
    };
    blend(canvas, near.pixel, colour, cover);
  }
}
