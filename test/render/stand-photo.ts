/**
 * Pictures of one stand: the same wall, clutter, marks and camera in each, the blank bent otherwise. The grain is each
 * picture's own.
 */
import type { BentBlank } from './bent-blank.ts';
import { type Camera, cameraChoice, cameraFor } from './camera.ts';
import { type Canvas, canvasOf, type Place } from './canvas.ts';
import { develop, developmentChoice, type Picture } from './develop.ts';
import { paintHungWeight, paintMark } from './paint-props.ts';
import { markPlaces, tinted } from './photo.ts';
import { type Random, randomFrom } from './random.ts';
import { paintBlank } from './second-rod.ts';
import { type Clutter, paintBox, paintCable, paintShelf, paintWall } from './wall.ts';

export interface StandScene {
  camera: Camera;
  /** True places. */
  marks: Place[];
  /** `index` counts the pictures; a weight is drawn where one hangs. Several blanks are one that moves meanwhile. */
  paint(blank: BentBlank | readonly BentBlank[], index: number, hangs: boolean): Picture;
}

export interface StandChoice {
  seed: number;
  widthPx: number;
  marks: number;
  /** Paints one; `number` counts from 1. */
  mark?: (canvas: Canvas, camera: Camera, at: Place, number: number, random: Random) => void;
}

/** A scene that holds all of `blanks`. */
export function standScene(
  blanks: readonly BentBlank[],
  { seed, widthPx, marks: count, mark: paintOne = unnumbered }: StandChoice,
): StandScene {
  const random = randomFrom(seed);
  const heightPx = Math.round(0.75 * widthPx);
  const frame = frameAround(blanks, random);
  const camera = cameraFor(cameraChoice(random, widthPx, heightPx, frame));
  const marks = markPlaces(random, frame, count);
  const light = random.chance(0.4);
  return {
    camera,
    marks,
    paint(blank, index, hangs) {
      const moments = 'axis' in blank ? [blank] : blank;
      const painted = moments.map((moment) => {
        // the same chances for every picture, so that nothing but the blank moves
        const same = randomFrom(seed + 1);
        const canvas = canvasOf(widthPx, heightPx);
        const tone = light ? same.between(0.02, 0.15) : same.between(0.3, 0.85);
        paintWall(canvas, same, tinted(same, tone, 0.2));
        const middle = { x: (frame.left + frame.right) / 2, y: (frame.bottom + frame.top) / 2 };
        const scalePx = camera.scaleAt(middle);
        const clutter: Clutter = { canvas, random: same, project: camera.project, scalePx, frame };
        for (let i = 0; i < 3; i++) if (same.chance(0.6)) paintShelf(clutter);
        for (let i = 0; i < 3; i++) if (same.chance(0.6)) paintBox(clutter);
        if (same.chance(0.5)) paintCable(clutter);
        for (const [i, mark] of marks.entries()) paintOne(canvas, camera, mark, i + 1, same);
        paintBlank(canvas, camera, moment, { random: same, light });
        if (hangs) paintHungWeight(canvas, camera, moment.axis[moment.axis.length - 1], same, scalePx);
        return { canvas, development: developmentChoice(same) };
      });
      const [{ development }] = painted;
      return develop(
        meanOf(painted.map(({ canvas }) => canvas)),
        randomFrom(seed + 100 + index),
        development,
      );
    },
  };
}

/** Takes the first one over. */
function meanOf([first, ...others]: readonly Canvas[]): Canvas {
  for (let i = 0; others.length > 0 && i < first.light.length; i++) {
    const sum = others.reduce((total, { light }) => total + light[i], first.light[i]);
    first.light[i] = sum / (others.length + 1);
  }
  return first;
}

function unnumbered(canvas: Canvas, camera: Camera, at: Place, _: number, random: Random): void {
  paintMark(canvas, camera, at, random);
}

function frameAround(blanks: readonly BentBlank[], random: Random): Clutter['frame'] {
  const places = blanks.flatMap(({ axis }) => axis);
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  return {
    left: Math.min(...xs) - random.between(0.12, 0.3),
    right: Math.max(...xs) + random.between(0.08, 0.3),
    bottom: Math.min(...ys) - random.between(0.1, 0.4),
    top: Math.max(...ys) + random.between(0.08, 0.3),
  };
}
