import { wallMarkOutlines, wallMarkRadii } from '../../src/engine/wall-mark/wall-mark.ts';
import { type Camera, cameraChoice, cameraFor } from './camera.ts';
import { type Canvas, canvasOf, fillPolygon, type Place } from './canvas.ts';
import { develop, developmentChoice, type Picture } from './develop.ts';
import { type Random, randomFrom } from './random.ts';
import { paintLargeShadow, paintStrangeBackdrop } from './strange.ts';
import { type Clutter, paintBox, paintCable, paintShelf, paintWall } from './wall.ts';

/** Printed marks on a wall, with where their middles are seen. Only the marks' outlines are shared with the reader. */
export interface MarkScene {
  picture: Picture;
  marks: { number: number; atM: Place; centrePx: Place; topPx: Place; radiusPx: number }[];
  camera: Camera;
}

export interface MarkSceneChoice {
  seed: number;
  widthPx: number;
  heightPx: number;
  numbers: readonly number[];
  radiusM: number;
  /** No wall texture, no clutter, little grain. */
  clean?: boolean;
  /** As they were printed before the fish: two triangles in the middle. */
  printedEarlier?: boolean;
  /** Painted over every mark, in its own frame (outer radius 1), after it. */
  cover?(paint: { canvas: Canvas; project(place: Place): Place; random: Random }): void;
}

export function paintMarkScene(choice: MarkSceneChoice): MarkScene {
  const random = randomFrom(choice.seed);
  const frame = { left: 0, right: 2.4, bottom: 0, top: 1.7 };
  const view = cameraChoice(random, choice.widthPx, choice.heightPx, frame);
  const camera = cameraFor({
    ...view,
    rollRad: random.between(-0.6, 0.6),
    yawRad: random.between(-0.5, 0.5),
  });
  const canvas = canvasOf(choice.widthPx, choice.heightPx);
  const tone = random.between(0.15, 0.8);
  paintWall(canvas, random, { red: tone, green: tone * 0.95, blue: tone * 0.9 });
  const scalePx = camera.scaleAt({ x: 1.2, y: 0.85 });
  const clutter: Clutter = { canvas, random, project: camera.project, scalePx, frame };
  if (!choice.clean) {
    paintStrangeBackdrop(clutter);
    for (let i = 0; i < 3; i++) paintShelf(clutter);
    for (let i = 0; i < 3; i++) paintBox(clutter);
    for (let i = 0; i < 2; i++) paintCable(clutter);
  }
  const marks = choice.numbers.map((number, i) => {
    const columns = Math.ceil(Math.sqrt(choice.numbers.length * 1.4));
    const rows = Math.ceil(choice.numbers.length / columns);
    const at = {
      x: 0.25 + (1.9 * (i % columns)) / Math.max(1, columns - 1) + random.between(-0.05, 0.05),
      y: 0.25 + (1.2 * Math.floor(i / columns)) / Math.max(1, rows - 1) + random.between(-0.05, 0.05),
    };
    const turn = random.chance(0.7) ? random.between(-0.15, 0.15) : random.between(0, 6.28);
    const project = (place: Place): Place => {
      const u = choice.radiusM * (place.x * Math.cos(turn) - place.y * Math.sin(turn));
      const v = choice.radiusM * (place.x * Math.sin(turn) + place.y * Math.cos(turn));
      return camera.project({ x: at.x + u, y: at.y + v });
    };
    paintWallMark(canvas, number, project, choice.printedEarlier);
    choice.cover?.({ canvas, project, random });
    return {
      number,
      atM: at,
      centrePx: camera.project(at),
      topPx: project({ x: 0, y: 1 }),
      radiusPx: choice.radiusM * camera.scaleAt(at),
    };
  });
  if (!choice.clean && random.chance(0.6)) paintLargeShadow(clutter);
  const development = choice.clean
    ? { blurPx: 0.7, grain: 0.5, sharpen: 0, exposure: 1 }
    : developmentChoice(random);
  return { picture: develop(canvas, random, development), marks, camera };
}

/** `project` takes places of the mark's own frame: outer radius 1, y up. */
export function paintWallMark(
  canvas: Canvas,
  number: number,
  project: (place: Place) => Place,
  printedEarlier = false,
): void {
  const paper = { red: 0.82, green: 0.82, blue: 0.8 };
  const ink = { red: 0.025, green: 0.025, blue: 0.03 };
  const half = wallMarkRadii.paper;
  const sheet = [
    { x: -half, y: -half },
    { x: half, y: -half },
    { x: half, y: half },
    { x: -half, y: half },
  ];
  fillPolygon(canvas, sheet.map(project), paper);
  const [disc, hole, tail, body, eye] = wallMarkOutlines(number).rings;
  fillPolygon(canvas, disc.map(project), ink);
  fillPolygon(canvas, hole.map(project), paper);
  for (const part of printedEarlier ? triangles : [tail, body]) fillPolygon(canvas, part.map(project), ink);
  if (!printedEarlier) fillPolygon(canvas, eye.map(project), paper);
}

const triangles: Place[][] = [0.54, -0.54].map((side) => [
  { x: 0, y: 0 },
  { x: side, y: 0 },
  { x: 0, y: side },
]);
