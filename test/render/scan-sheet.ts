import { type Canvas, type Colour, canvasOf, fillPolygon, type Place } from './canvas.ts';
import { develop, type Picture } from './develop.ts';
import { type Random, randomFrom } from './random.ts';
import { paintScanClutter } from './scan-clutter.ts';
import { strokeShadow, strokeTube } from './stroke.ts';

/** A painted flatbed scan of two-footed wire guides, with what is true of each. Lengths in metres. */
export interface ScanSheet {
  picture: Picture;
  dpi: number;
  guides: GuideTruth[];
  /** Middles of the pairs that touch. */
  touchingPx: [number, number][];
  notes: string;
}

export interface GuideTruth {
  centrePx: [number, number];
  lengthM: number;
  offsetM: number;
  angleRad: number;
}

export interface ScanChoice {
  seed: number;
  guides: number;
  dpi?: number;
  widthMm?: number;
  heightMm?: number;
  clutter?: boolean;
  /** Fixed background; by default chance decides. */
  darkGround?: boolean;
  /** Little flattening, worn and bowed feet, glints, shadows, paper grain, more foreign things. */
  hard?: boolean;
  /**
   * What the reader was not developed on: keeled and lopsided shapes, smaller and larger ones, feet of unlike
   * length, chrome that mirrors the ground, black on grey, a dark lid's border, a seam of light.
   */
  strange?: boolean;
  /** Every guide's size instead of chance: 0 small, 1 large; the smallest fly snakes lie about -0.3. */
  size?: number;
  /** So many further pairs that touch or cross; they have no truth and must not be read as guides. */
  touchingPairs?: number;
}

/** One guide's shape in its own frame: millimetres, foot A along −x, foot B along +x, midway at the origin. */
interface GuideShape {
  footMm: number;
  footWidthMm: number;
  wireMm: number;
  spanMm: number;
  swingMm: number;
  swing: 'sway' | 'bulge' | 'loop' | 'keel' | 'lopsided';
  /** The second foot's length over the first's. */
  footRatio: number;
  /** How the foot's outline narrows to its end: 0 square, 1 pointed. */
  pointed: number;
  /** How wide the foot is at the wire, as a share of its width. */
  shoulder: number;
  bend: { offsetMm: number; angleRad: number };
  /** Roughness of the outline and sideways bow of the feet. */
  wornMm: number;
  bowMm: number;
}

export function paintScan(choice: ScanChoice): ScanSheet {
  const random = randomFrom(choice.seed);
  const dpi = choice.dpi ?? 600;
  const perMm = dpi / 25.4;
  const widthMm = choice.widthMm ?? 150;
  const heightMm = choice.heightMm ?? 110;
  const canvas = canvasOf(Math.round(widthMm * perMm), Math.round(heightMm * perMm));
  const dark = choice.darkGround ?? random.chance(0.4);
  const strange = choice.strange ?? false;
  const hard = choice.hard ?? strange;
  paintGround(canvas, random, dark, hard, strange);
  if (strange) paintGlassFaults(canvas, random);
  const pairs = choice.touchingPairs ?? 0;
  const all = spread(random, choice.guides + pairs, widthMm, heightMm);
  const places = all.slice(pairs);
  if (choice.clutter ?? true)
    paintScanClutter(canvas, random, { perMm, widthMm, heightMm, dark, taken: all, hard });
  const bench = { canvas, random, perMm, dark, hard, strange, size: choice.size };
  const guides = places.map((place) => paintGuide(bench, place));
  const touchingPx = all.slice(0, pairs).map((place) => paintTouchingPair(bench, place));
  const picture = develop(canvas, random, {
    blurPx: random.between(0.5, 1.3) * (dpi / 600),
    grain: random.between(0.8, 4),
    sharpen: random.chance(0.4) ? random.between(0, 0.6) : 0,
    exposure: 1,
  });
  return {
    picture,
    dpi,
    guides,
    touchingPx,
    notes: `${dark ? 'dark' : 'light'} ground, ${guides.length} guides`,
  };
}

/** Two guides laid so near that they touch or cross. */
function paintTouchingPair(bench: Bench, at: Place): [number, number] {
  const first = paintGuide(bench, { x: at.x, y: at.y });
  const aside = bench.random.between(0.3, 2);
  const angle = bench.random.between(0, 2 * Math.PI);
  paintGuide(bench, { x: at.x + aside * Math.cos(angle), y: at.y + aside * Math.sin(angle) });
  return first.centrePx;
}

/** A dark border where the lid does not reach, and a streak down the glass from a speck on the sensor. */
function paintGlassFaults(canvas: Canvas, random: Random): void {
  const { width, height } = canvas;
  const box = (left: number, top: number, right: number, bottom: number): Place[] => [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  if (random.chance(0.4)) {
    const edge = random.between(0.01, 0.03) * width;
    fillPolygon(canvas, box(width - edge, 0, width, height), { red: 0.01, green: 0.01, blue: 0.01 }, 0.9);
  }
  if (random.chance(0.3)) {
    const x = random.between(0.1, 0.9) * width;
    fillPolygon(canvas, box(x, 0, x + 1.5, height), { red: 0.3, green: 0.6, blue: 0.3 }, 0.3);
  }
}

function paintGround(canvas: Canvas, random: Random, dark: boolean, hard: boolean, strange: boolean): void {
  const paper = hard ? random.between(0, 0.03) : 0;
  const grey = strange && random.chance(0.35);
  const plain = dark ? random.between(0.004, 0.06) : random.between(0.7, 0.97);
  const tone = grey ? (dark ? random.between(0.06, 0.12) : random.between(0.25, 0.55)) : plain;
  const slopeX = random.between(-0.06, 0.06);
  const slopeY = random.between(-0.06, 0.06);
  for (let y = 0; y < canvas.height; y++) {
    for (let x = 0; x < canvas.width; x++) {
      const grain = paper > 0 && (x + 2 * y) % 3 === 0 ? paper * random.normal() : 0;
      const level =
        tone * (1 + grain + slopeX * (x / canvas.width - 0.5) + slopeY * (y / canvas.height - 0.5));
      canvas.light.fill(level, 3 * (y * canvas.width + x), 3 * (y * canvas.width + x) + 3);
    }
  }
}

/** Middles at least 26 mm apart and 24 mm from the border, as far as there is room. */
function spread(random: Random, count: number, widthMm: number, heightMm: number): Place[] {
  const places: Place[] = [];
  for (let tries = 0; tries < 3000 && places.length < count; tries++) {
    const at = { x: random.between(24, widthMm - 24), y: random.between(24, heightMm - 24) };
    if (places.every((other) => Math.hypot(other.x - at.x, other.y - at.y) > 40)) places.push(at);
  }
  return places;
}

function shapeOf({ random, hard, strange, size: fixed }: Bench): GuideShape {
  const chance = strange ? random.between(-0.25, 1.5) : random.between(0, 1);
  const size = fixed ?? chance;
  const wireMm = (0.66 + 0.45 * size) * (strange ? random.between(0.85, 1.2) : 1);
  const straight = random.chance(0.3);
  const swings = ['sway', 'bulge', 'loop', ...(strange ? (['keel', 'lopsided'] as const) : [])] as const;
  return {
    footRatio: strange && random.chance(0.4) ? random.between(0.72, 1) : 1,
    footMm: 5 + 6 * size + random.between(-0.5, 0.8),
    footWidthMm: wireMm * random.between(hard ? 1.2 : 1.35, 2.1),
    wireMm,
    spanMm: 6.5 + 8 * size + random.between(-1, 1),
    swingMm: 1.4 + 2.6 * size + random.between(-0.2, 0.4),
    swing: random.pick(swings),
    pointed: random.between(0, 0.9),
    shoulder: random.between(0.65, 1),
    bend: {
      offsetMm: (straight ? 0.15 : 0.7) * random.normal(),
      angleRad: (straight ? 0.012 : 0.07) * random.normal(),
    },
    wornMm: hard ? random.between(0, 0.05) : 0,
    bowMm: hard ? 0.04 * random.normal() : 0,
  };
}

interface Bench {
  canvas: Canvas;
  random: Random;
  perMm: number;
  dark: boolean;
  hard: boolean;
  strange: boolean;
  size: number | undefined;
}

function paintGuide(bench: Bench, at: Place): GuideTruth {
  const { canvas, random, perMm, dark, hard, strange } = bench;
  const shape = shapeOf(bench);
  const turn = random.between(0, 2 * Math.PI);
  const toPx = (local: Place): Place => ({
    x: (at.x + local.x * Math.cos(turn) - local.y * Math.sin(turn)) * perMm,
    y: (at.y + local.x * Math.sin(turn) + local.y * Math.cos(turn)) * perMm,
  });
  const { footMm, spanMm, bend } = shape;
  // Each foot takes half of the bend, so that the mean axis is the local x axis.
  const apart = spanMm + footMm;
  const feet = [-1, 1].map((side) => ({
    middle: { x: (side * apart) / 2, y: (side * bend.offsetMm) / 2 },
    angle: (side * bend.angleRad) / 2,
    side,
    lengthMm: side > 0 ? footMm * shape.footRatio : footMm,
  }));
  const tone = dark ? random.between(hard ? 0.12 : 0.25, 0.7) : random.between(0.05, hard ? 0.5 : 0.35);
  const lamp = {
    sideways: random.between(-0.6, 0.6),
    ambient: 0.45,
    diffuse: 0.6,
    gloss: random.between(0, 0.35),
    glossWidth: random.between(0.2, 0.4),
  };
  const metal: Colour = { red: tone, green: tone * 0.98, blue: tone * 0.94 };
  const wire = wirePath(shape, feet).map(toPx);
  const radius = (): number => (shape.wireMm / 2) * perMm;
  const shift = random.between(0, 0.5) * perMm;
  if (!dark) {
    const shadow = wire.map((place) => ({ x: place.x + shift * 0.4, y: place.y + shift }));
    strokeShadow(canvas, shadow, radius, Math.max(1, shift * 0.6), random.between(0, 0.25));
  }
  const chrome = strange && random.chance(0.35);
  if (chrome)
    Object.assign(lamp, { ambient: 0.15, diffuse: 0.5, gloss: 0.9, glossWidth: random.between(0.25, 0.5) });
  strokeTube(canvas, wire, radius, () => metal, lamp);
  const flat = random.between(0.8, 1.4);
  for (const foot of feet) {
    const place = (local: Place): Place => {
      const bowed = local.y + shape.bowMm * (1 - (2 * local.x) ** 2 / foot.lengthMm ** 2);
      return toPx({
        x: foot.middle.x + local.x * Math.cos(foot.angle) - bowed * Math.sin(foot.angle),
        y: foot.middle.y + local.x * Math.sin(foot.angle) + bowed * Math.cos(foot.angle),
      });
    };
    const outline = footOutline(shape, foot, random);
    if (hard && !dark) paintFootShadow(bench, outline.map(place));
    const facet = { red: metal.red * flat, green: metal.green * flat, blue: metal.blue * flat };
    fillPolygon(canvas, outline.map(place), facet);
    if (hard) paintGlint(bench, shape, place, facet);
    if (chrome)
      paintGlint(bench, shape, place, {
        red: facet.red * 1.5,
        green: facet.green * 1.5,
        blue: facet.blue * 1.6,
      });
  }
  const middle = toPx({ x: 0, y: 0 });
  return {
    centrePx: [middle.x, middle.y],
    // Middle to middle, and half of each foot beyond.
    lengthM: (apart + (feet[0].lengthMm + feet[1].lengthMm) / 2) / 1e3,
    offsetM: Math.abs(bend.offsetMm) / 1e3,
    angleRad: Math.abs(bend.angleRad),
  };
}

/** Outline of a foot about its middle, its end towards `side`. */
function footOutline(shape: GuideShape, { side, lengthMm }: Foot, random: Random): Place[] {
  const half = lengthMm / 2;
  const wide = shape.footWidthMm / 2;
  const end = 1 - shape.pointed;
  const upper = [
    { x: -half, y: wide * shape.shoulder },
    { x: -half * 0.6, y: wide },
    { x: half * 0.2, y: wide },
    { x: half * 0.8, y: wide * (0.35 + 0.6 * end) },
    { x: half * 0.95, y: wide * (0.15 + 0.6 * end) },
    { x: half, y: wide * 0.6 * end },
  ];
  const lower = upper.map((place) => ({ x: place.x, y: -place.y })).reverse();
  return denseOutline([...upper, ...lower]).map((place) => ({
    x: side * place.x,
    y: side * place.y + (shape.wornMm > 0 ? shape.wornMm * random.normal() : 0),
  }));
}

/** Steps of about 0.4 mm, so that wear and bow show. */
function denseOutline(corners: readonly Place[]): Place[] {
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length];
    const count = Math.max(1, Math.round(Math.hypot(b.x - a.x, b.y - a.y) / 0.4));
    return Array.from({ length: count }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / count,
      y: a.y + ((b.y - a.y) * k) / count,
    }));
  });
}

/** The lamp travels along one axis, so the shadow of every foot falls the same way. */
function paintFootShadow(bench: Bench, outline: readonly Place[]): void {
  const { canvas, random, perMm } = bench;
  const steps = 5;
  const reach = random.between(0.05, 0.35) * perMm;
  const strength = random.between(0.02, 0.08);
  for (let i = 1; i <= steps; i++) {
    const moved = outline.map((place) => ({
      x: place.x + (reach * i * 0.3) / steps,
      y: place.y + (reach * i) / steps,
    }));
    fillPolygon(canvas, moved, { red: 0.1, green: 0.1, blue: 0.1 }, strength);
  }
}

/** A bright or dark stripe along the foot, off its middle, as from a bevel or from grinding. */
function paintGlint(bench: Bench, shape: GuideShape, place: (local: Place) => Place, facet: Colour): void {
  const { canvas, random } = bench;
  const half = shape.footMm * random.between(0.2, 0.42);
  const wide = shape.footWidthMm * random.between(0.05, 0.2);
  const aside = shape.footWidthMm * random.between(-0.25, 0.25);
  const gain = random.between(0.6, 1.9);
  const corners = [
    { x: -half, y: aside - wide },
    { x: half, y: aside - wide },
    { x: half, y: aside + wide },
    { x: -half, y: aside + wide },
  ];
  const colour = { red: facet.red * gain, green: facet.green * gain, blue: facet.blue * gain };
  fillPolygon(canvas, corners.map(place), colour, 0.8);
}

interface Foot {
  middle: Place;
  angle: number;
  side: number;
  lengthMm: number;
}

/** The wire's course from foot to foot, seen from above. */
function wirePath(shape: GuideShape, feet: readonly Foot[]): Place[] {
  const inner = feet.map((foot) => ({
    x: foot.middle.x - (foot.side * Math.cos(foot.angle) * foot.lengthMm) / 2,
    y: foot.middle.y - (foot.side * Math.sin(foot.angle) * foot.lengthMm) / 2,
  }));
  const steps = 160;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const base = {
      x: inner[0].x + (inner[1].x - inner[0].x) * t,
      y: inner[0].y + (inner[1].y - inner[0].y) * t,
    };
    const window = Math.sin(Math.PI * t) ** 2;
    if (shape.swing === 'bulge') return { x: base.x, y: base.y + shape.swingMm * window };
    if (shape.swing === 'keel') {
      // Straight legs to a blunt corner.
      const rise = Math.min(1, 2.6 * Math.min(t, 1 - t));
      return { x: base.x, y: base.y + shape.swingMm * rise };
    }
    if (shape.swing === 'lopsided') {
      const skew = Math.sin(Math.PI * t ** 1.7) ** 2;
      return { x: base.x, y: base.y + shape.swingMm * (skew - 0.5 * Math.sin(Math.PI * t) ** 4) };
    }
    const sway = Math.sin(2 * Math.PI * t) * Math.sqrt(window);
    // A loop also runs back on itself in the middle.
    const back = shape.swing === 'loop' ? 0.22 * shape.spanMm * Math.sin(2 * Math.PI * t) * window : 0;
    return { x: base.x + back, y: base.y + shape.swingMm * sway };
  });
}
