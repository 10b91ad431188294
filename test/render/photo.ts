import { paintBackdrop, paintLeaningRod, paintLightPatch } from './backdrop.ts';
import { type BentBlank, bendBlank, blankChoice, offAxis } from './bent-blank.ts';
import { type Camera, type CameraChoice, cameraChoice, cameraFor } from './camera.ts';
import { type Canvas, type Colour, canvasOf, type Place } from './canvas.ts';
import { develop, developmentChoice, type Picture } from './develop.ts';
import { dense, paintHungWeight, paintMark } from './paint-props.ts';
import { type Random, randomFrom } from './random.ts';
import { paintBlank, placeSecondRod, type SecondRodKind } from './second-rod.ts';
import { paintLargeShadow, paintSecondRod, paintStrangeBackdrop, paintStrings } from './strange.ts';
import { strokeFlat, strokeShadow, strokeTube } from './stroke.ts';
import { type Clutter, paintBox, paintCable, paintShelf, paintWall } from './wall.ts';

/** A painted photograph of a bent blank in front of an invented workshop wall, with what is true of it. */
export interface Photo {
  picture: Picture;
  marks: { px: [number, number]; atM: [number, number] }[];
  ends: { butt: [number, number]; tip: [number, number] };
  /** The blank's axis, butt to tip, in the marks' plane. */
  axis: Place[];
  camera: Camera;
  /** The second rod that was asked for. */
  other?: { ends: Photo['ends']; axis: Place[] };
  /** In words, for reports. */
  notes: string[];
}

export interface PhotoChoice {
  seed: number;
  widthPx: number;
  heightPx: number;
  marks: number;
  /** Errors of the taps, standard deviation. */
  markTapPx?: number;
  endTapPx?: number;
  clutter?: number;
  /** Walls of board, brick and rough plaster, other rods, little contrast, coloured sections, portrait format. */
  hard?: boolean;
  /**
   * What the tracer was not developed on: timber, doors, tiles, pegboards, a second bent rod, a person's shadow,
   * wide-angle lenses, marks that do not surround the blank evenly, blanks over their own shadow.
   */
  strange?: boolean;
  /** Another whole bent blank in the frame; `none` leaves out also those that hard and strange pictures may have. */
  secondRod?: SecondRodKind | 'none';
  /**
   * One of two pictures of the same bent blank and the same marks: four round the whole, the rest round its top third. The
   * whole shows all of them, the close-up the inner ones, as many as `marks` says.
   */
  pair?: 'whole' | 'close-up';
}

export function paintPhoto(choice: PhotoChoice): Photo {
  const random = randomFrom(choice.seed);
  const blank = bendBlank(blankChoice(random));
  const around = frameAround(blank, random);
  const top = { ...blank, axis: blank.axis.slice(-Math.ceil(blank.axis.length / 3)) };
  const inner = choice.pair ? within(frameAround(top, randomFrom(choice.seed + 17)), around) : around;
  const frame = choice.pair === 'close-up' ? inner : around;
  // Another place and turn of the camera for the close-up.
  const eye = choice.pair === 'close-up' ? randomFrom(choice.seed + 31) : random;
  const camera = cameraFor(viewOf(choice, eye, frame));
  const canvas = canvasOf(choice.widthPx, choice.heightPx);
  const notes: string[] = [];
  const lightBlank = random.chance(0.4);
  const wallTone = lightBlank ? random.between(0.02, 0.15) : random.between(0.3, 0.85);
  paintWall(canvas, random, tinted(random, wallTone, 0.2));
  const scalePx = camera.scaleAt({ x: (frame.left + frame.right) / 2, y: (frame.bottom + frame.top) / 2 });
  const clutter: Clutter = { canvas, random, project: camera.project, scalePx, frame };
  const amount = choice.clutter ?? 1;
  if (choice.hard) {
    notes.push(paintBackdrop(clutter));
    if (random.chance(0.4)) paintLightPatch(clutter);
    for (let i = 0; i < 2; i++) if (!choice.secondRod && random.chance(0.4)) paintLeaningRod(clutter);
  }
  if (choice.strange) {
    notes.push(paintStrangeBackdrop(clutter));
    if (!choice.secondRod && random.chance(0.5)) paintSecondRod(clutter, camera);
    if (random.chance(0.4)) paintStrings(clutter);
  }
  for (let i = 0; i < 3 * amount; i++) if (random.chance(0.6)) paintShelf(clutter);
  for (let i = 0; i < 3 * amount; i++) if (random.chance(0.6)) paintBox(clutter);
  const behind = Math.round(random.between(0, 3.5) * amount);
  for (let i = 0; i < behind; i++) paintCable(clutter);
  const marks = choice.pair
    ? pairMarks(choice, around, inner)
    : choice.strange
      ? markPlacesUneven(random, frame, choice.marks)
      : markPlaces(random, frame, choice.marks);
  for (const mark of marks) paintMark(canvas, camera, mark, random);
  const other =
    choice.secondRod && choice.secondRod !== 'none'
      ? placeSecondRod(blank, frame, choice.secondRod, choice.seed)
      : undefined;
  if (other)
    paintBlank(canvas, camera, other, { random: randomFrom(choice.seed + 104729), light: lightBlank });
  const hard = choice.hard ?? choice.strange ?? false;
  const closeShadow = choice.strange === true && random.chance(0.4);
  paintRod({ canvas, camera, blank, random, light: lightBlank, notes, hard, wallTone, closeShadow });
  const inFront = Math.round(random.between(0, 2.4) * amount);
  for (let i = 0; i < inFront; i++) paintCable(clutter);
  if (choice.strange && random.chance(0.4)) paintLargeShadow(clutter);
  notes.push(
    `${lightBlank ? 'light' : 'dark'} blank, ${behind}+${inFront} cables, k1 ${camera.k1.toFixed(3)}`,
  );
  const picture = develop(canvas, random, developmentChoice(random));
  const tap = (place: Place, sigma: number): [number, number] => {
    const at = camera.project(place);
    return [at.x + sigma * random.normal(), at.y + sigma * random.normal()];
  };
  return {
    picture,
    marks: marks.map((place) => ({ px: tap(place, choice.markTapPx ?? 0.4), atM: [place.x, place.y] })),
    ends: {
      butt: tap(choice.pair === 'close-up' ? top.axis[0] : blank.axis[0], choice.endTapPx ?? 3),
      tip: tap(blank.axis.at(-1)!, choice.endTapPx ?? 3),
    },
    ...(other
      ? {
          other: { axis: other.axis, ends: { butt: tap(other.axis[0], 2), tip: tap(other.axis.at(-1)!, 2) } },
        }
      : {}),
    axis: blank.axis,
    camera,
    notes,
  };
}

function viewOf(choice: PhotoChoice, random: Random, frame: Clutter['frame']): CameraChoice {
  const view = cameraChoice(random, choice.widthPx, choice.heightPx, frame);
  if (!choice.strange) return view;
  // A telephone's wide lens after its own correction, or little of it.
  const wide = random.chance(0.5);
  return {
    ...view,
    focalShare: wide ? random.between(0.5, 0.65) : random.between(0.65, 1.1),
    k1: random.between(-0.12, 0.05),
    k2: random.between(-0.01, 0.03),
    yawRad: random.between(-0.35, 0.35),
    pitchRad: random.between(-0.2, 0.2),
  };
}

function frameAround(blank: BentBlank, random: Random): Clutter['frame'] {
  const xs = blank.axis.map((place) => place.x);
  const ys = blank.axis.map((place) => place.y);
  return {
    left: Math.min(...xs) - random.between(0.12, 0.3),
    right: Math.max(...xs) + random.between(0.08, 0.3),
    bottom: Math.min(...ys) - random.between(0.1, 0.4),
    top: Math.max(...ys) + random.between(0.08, 0.3),
  };
}

function within(frame: Clutter['frame'], outer: Clutter['frame']): Clutter['frame'] {
  return {
    left: Math.max(frame.left, outer.left),
    right: Math.min(frame.right, outer.right),
    bottom: Math.max(frame.bottom, outer.bottom),
    top: Math.min(frame.top, outer.top),
  };
}

export function tinted(random: Random, tone: number, spread: number): Colour {
  return {
    red: tone * random.between(1 - spread, 1 + spread),
    green: tone * random.between(1 - spread, 1 + spread),
    blue: tone * random.between(1 - spread, 1 + spread),
  };
}

/** Corners of the frame first, then the middles of its edges, then anywhere. */
export function markPlaces(random: Random, frame: Clutter['frame'], count: number): Place[] {
  const { left, right, bottom, top } = frame;
  const inset = 0.04;
  const jitter = (): number => random.between(-0.02, 0.02);
  const places = [
    [left + inset, bottom + inset],
    [right - inset, bottom + inset],
    [right - inset, top - inset],
    [left + inset, top - inset],
    [(left + right) / 2, top - inset],
    [(left + right) / 2, bottom + inset],
    [left + inset, (bottom + top) / 2],
    [right - inset, (bottom + top) / 2],
  ].map(([x, y]) => ({ x: x + jitter(), y: y + jitter() }));
  while (places.length < count)
    places.push({ x: random.between(left, right), y: random.between(bottom, top) });
  return places.slice(0, count);
}

/** The same places for both pictures of a pair; the close-up has only the inner ones. */
function pairMarks(choice: PhotoChoice, around: Clutter['frame'], inner: Clutter['frame']): Place[] {
  const random = randomFrom(choice.seed + 47);
  const outerPlaces = markPlaces(random, around, 4);
  const innerPlaces = markPlaces(random, inner, choice.marks);
  return choice.pair === 'close-up' ? innerPlaces : [...outerPlaces, ...innerPlaces];
}

/** Marks where there was room: drawn in from the corners by up to a fifth of the frame each. */
function markPlacesUneven(random: Random, frame: Clutter['frame'], count: number): Place[] {
  const wide = frame.right - frame.left;
  const high = frame.top - frame.bottom;
  return markPlaces(random, frame, count).map(({ x, y }) => ({
    x: x - Math.sign(x - (frame.left + frame.right) / 2) * random.between(0, 0.2) * wide * 0.8,
    y: y - Math.sign(y - (frame.bottom + frame.top) / 2) * random.between(0, 0.2) * high * 0.8,
  }));
}

interface RodPainting {
  canvas: Canvas;
  camera: Camera;
  blank: BentBlank;
  random: Random;
  light: boolean;
  notes: string[];
  hard: boolean;
  wallTone: number;
  /** The wall so near that the shadow touches the blank. */
  closeShadow: boolean;
}

function paintRod(painting: RodPainting): void {
  const { canvas, camera, blank, random, light, notes, hard, wallTone, closeShadow } = painting;
  const line = blank.axis.map(camera.project);
  const scale = blank.axis.map((place) => camera.scaleAt(place));
  const at = (values: readonly number[], along: number): number => {
    const i = Math.min(values.length - 2, Math.floor(along));
    return values[i] + (values[i + 1] - values[i]) * (along - i);
  };
  const radiusPxs = blank.radiusM.map((radius, i) => radius * scale[i]);
  const radiusPx = (along: number): number => at(radiusPxs, along);
  notes.push(`width ${(2 * radiusPxs[0]).toFixed(1)}..${(2 * radiusPxs.at(-1)!).toFixed(1)} px`);
  // The shadow falls on the wall beside the blank.
  if (random.chance(0.8)) {
    const near = closeShadow ? 0.15 : 1;
    const shiftX = near * random.between(-0.03, 0.03);
    const shiftY = near * random.between(-0.05, -0.004);
    const shadow = blank.axis.map((place) => camera.project({ x: place.x + shiftX, y: place.y + shiftY }));
    const sigmaPx = Math.max(1, random.between(0.05, 0.25) * Math.hypot(shiftX, shiftY) * scale[0]);
    strokeShadow(canvas, shadow, radiusPx, sigmaPx, random.between(0.15, 0.6));
    notes.push(`shadow ${(Math.hypot(shiftX, shiftY) * 1e3).toFixed(0)} mm off`);
  }
  const base = tinted(random, light ? random.between(0.4, 0.85) : random.between(0.01, 0.1), 0.5);
  if (hard && random.chance(0.3)) {
    // A blank hardly darker or lighter than its wall.
    const near = tinted(
      random,
      wallTone * (light ? random.between(1.8, 3) : random.between(0.25, 0.55)),
      0.15,
    );
    Object.assign(base, near);
    notes.push('low contrast');
  }
  const second = hard && random.chance(0.4) ? tinted(random, light ? 0.6 : 0.06, 0.6) : base;
  const wrap = tinted(random, light ? random.between(0.3, 0.8) : random.between(0.01, 0.15), 0.6);
  const stations = guideStations(blank, random);
  const steps = blank.axis.length - 1;
  const wrapHalf = (0.014 / blank.lengthM) * steps;
  const joint = steps * 0.45;
  const colourAt = (along: number): Colour =>
    stations.some((station) => Math.abs(along - station) < wrapHalf) ? wrap : along > joint ? second : base;
  const side = random.between(-0.7, 0.7);
  const lamp = {
    sideways: side,
    ambient: random.between(0.2, 0.6),
    diffuse: random.between(0.3, 0.9),
    gloss: light ? random.between(0, 0.2) : random.between(0, 0.25),
    glossWidth: random.between(0.15, 0.4),
  };
  const grip = canvasGrip(blank, camera);
  strokeTube(canvas, line, radiusPx, colourAt, lamp);
  strokeTube(
    canvas,
    grip,
    () => 0.012 * scale[0],
    () => ({ red: 0.5, green: 0.32, blue: 0.16 }),
    lamp,
  );
  if (stations.length > 0) paintGuidesAndLine(canvas, camera, blank, random, stations, scale[0], notes);
  else if (random.chance(0.7)) paintHungWeight(canvas, camera, blank.axis.at(-1)!, random, scale[0]);
}

/** The grip continues the butt backwards. */
function canvasGrip(blank: BentBlank, camera: Camera): Place[] {
  const angle = blank.angleRad[0];
  return Array.from({ length: 20 }, (_, i) =>
    camera.project({ x: -Math.cos(angle) * (0.005 + i * 0.012), y: -Math.sin(angle) * (0.005 + i * 0.012) }),
  );
}

/** Indices along the axis where guides stand, tip-top last; none for a bare blank. */
function guideStations(blank: BentBlank, random: Random): number[] {
  if (random.chance(0.35)) return [];
  const count = Math.round(random.between(6, 11));
  const steps = blank.axis.length - 1;
  return Array.from({ length: count + 1 }, (_, i) => {
    const t = i / count;
    return Math.round(steps * (0.25 + 0.75 * (1 - (1 - t) ** 1.5)));
  });
}

function paintGuidesAndLine(
  canvas: Canvas,
  camera: Camera,
  blank: BentBlank,
  random: Random,
  stations: readonly number[],
  scalePx: number,
  notes: string[],
): void {
  const ink = { red: 0.12, green: 0.12, blue: 0.13 };
  const steps = blank.axis.length - 1;
  const height = (station: number): number => 0.0045 + 0.008 * (1 - station / steps);
  const rings = stations.map((station) => offAxis(blank, station, height(station)));
  for (const [i, station] of stations.entries()) {
    const half = Math.max(2, Math.round((0.008 / blank.lengthM) * steps));
    const foot = [station - half, station + half].map((k) => Math.max(0, Math.min(steps, k)));
    const legs = [offAxis(blank, foot[0], 0.001), rings[i], offAxis(blank, foot[1], 0.001)].map(
      camera.project,
    );
    strokeFlat(canvas, legs, () => 0.0006 * scalePx, ink);
    const ringPx = camera.project(rings[i]);
    const radius = height(station) * 0.45 * scalePx;
    const ring = Array.from({ length: 17 }, (_, k) => ({
      x: ringPx.x + 0.5 * radius * Math.cos((k * Math.PI) / 8),
      y: ringPx.y + radius * Math.sin((k * Math.PI) / 8),
    }));
    strokeFlat(canvas, ring, () => 0.0005 * scalePx, ink);
  }
  if (!random.chance(0.8)) return;
  const start = offAxis(blank, 0, 0.05);
  const last = rings.at(-1)!;
  const path = [start, ...rings, { x: last.x, y: last.y - random.between(0.05, 0.8) }];
  const tone = random.chance(0.5) ? random.between(0.5, 0.95) : random.between(0.02, 0.2);
  const radius = random.between(0.0001, 0.0005) * scalePx;
  strokeFlat(canvas, dense(path, 0.004).map(camera.project), () => radius, tinted(random, tone, 0.4));
  notes.push(`line ${(2 * radius).toFixed(1)} px`);
}
