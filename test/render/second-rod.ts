import { type BentBlank, bendBlank, blankChoice } from './bent-blank.ts';
import type { Camera } from './camera.ts';
import type { Canvas, Place } from './canvas.ts';
import { type Random, randomFrom } from './random.ts';
import { strokeShadow, strokeTube } from './stroke.ts';
import type { Clutter } from './wall.ts';

/** How another whole rod stands to the first: clear of it, or over it. */
export type SecondRodKind = 'apart' | 'crossing';

/**
 * Another blank as long as the first or down to two thirds of it, under its own load, wholly in the frame. Its chances
 * are its own, so that the picture around it stays as it is without.
 */
export function placeSecondRod(
  first: BentBlank,
  frame: Clutter['frame'],
  kind: SecondRodKind,
  seed: number,
): BentBlank {
  const random = randomFrom(seed + 7919);
  for (let shape = 0; shape < 60; shape++) {
    const lengthM = first.lengthM * random.between(0.66, 1);
    const bent = bendBlank({ ...blankChoice(random), lengthM }, 200);
    for (let place = 0; place < 50; place++) {
      const dx = random.between(frame.left, frame.left + 0.6 * (frame.right - frame.left));
      const dy = random.between(frame.bottom, frame.top);
      const axis = bent.axis.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
      if (axis.every((at) => isInside(at, frame)) && standAs(first.axis, axis) === kind)
        return { ...bent, axis };
    }
  }
  throw new Error(`no second rod ${kind} fits beside the first of seed ${seed}`);
}

function isInside({ x, y }: Place, { left, right, bottom, top }: Clutter['frame']): boolean {
  return x > left + 0.03 && x < right - 0.03 && y > bottom + 0.03 && y < top - 0.03;
}

/** Undefined where the two touch, run side by side within 6 cm, or cross within a seventh of an end. */
function standAs(first: readonly Place[], other: readonly Place[]): SecondRodKind | undefined {
  const near = (from: readonly Place[], to: readonly Place[], every: number): number[] =>
    from
      .filter((_, i) => i % every === 0)
      .map((a) => Math.min(...to.map((b) => Math.hypot(a.x - b.x, a.y - b.y))));
  const away = near(
    other,
    first.filter((_, i) => i % 10 === 0),
    6,
  );
  if (Math.min(...away) > 0.06) return 'apart';
  const ends = Math.ceil(away.length / 7);
  const clearEnds = Math.min(...away.slice(0, ends), ...away.slice(-ends)) > 0.08;
  const close = away.filter((one) => one < 0.06).length / away.length;
  return clearEnds && Math.min(...away) < 0.015 && close < 0.25 ? 'crossing' : undefined;
}

/** Paints it with a shadow of its own; light on a dark wall, dark on a light one. */
export function paintBlank(
  canvas: Canvas,
  camera: Camera,
  blank: BentBlank,
  { random, light }: { random: Random; light: boolean },
): void {
  const line = blank.axis.map(camera.project);
  const radiusPx = (along: number): number => {
    const at = Math.min(blank.axis.length - 1, Math.round(along));
    return blank.radiusM[at] * camera.scaleAt(blank.axis[at]);
  };
  const [shiftX, shiftY] = [random.between(-0.02, 0.02), random.between(-0.04, -0.01)];
  const shadow = blank.axis.map(({ x, y }) => camera.project({ x: x + shiftX, y: y + shiftY }));
  strokeShadow(canvas, shadow, radiusPx, random.between(2, 6), random.between(0.15, 0.5));
  const tone = light ? random.between(0.35, 0.8) : random.between(0.015, 0.09);
  const colour = { red: tone, green: tone * random.between(0.6, 1), blue: tone * random.between(0.5, 1) };
  strokeTube(canvas, line, radiusPx, () => colour, {
    sideways: random.between(-0.6, 0.6),
    ambient: 0.4,
    diffuse: 0.5,
    gloss: 0.1,
    glossWidth: 0.3,
  });
}
