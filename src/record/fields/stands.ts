/** Pictures of the bare blank from one stand, and the walls before which a shop takes its pictures. */
import { angle, count, flag, instant, length, many, order, row, text } from './declare.ts';

/** How far in front of its marks a blank hangs. */
const standOff = () =>
  length('the blank hangs in front of the marks by', [-5, 5], {
    empty: '0, in one plane',
    hint: 'from the wall to the middle of the blank, at the clamp',
  });

/** What holds for all pictures of a stand; each of them is a load test of the bare blank that names it. */
export const stands = many('Pictures of one stand', {
  order: order(),
  madeAt: instant('begun'),
  heldFromTip: length('tip to the clamp', [0, 10], {
    empty: 'where the curve begins',
    hint: 'where the blank leaves the clamp',
  }),
  buttAngle: angle('axis at the clamp, above level', { usual: 0 }),
  standOff: standOff(),
  leftOut: flag('leave these pictures out of the stiffness'),
});

/** Marks pinned up for good and measured once: every picture before them takes their places from here. */
export const walls = many('Wall', {
  order: order(),
  name: text('name of the wall', 120, { example: 'bench wall' }),
  standOff: standOff(),
  clampX: length('the blank leaves the clamp, to the right', [-50, 50], {
    hint: 'from the first mark; then butt and tip are found by themselves',
  }),
  clampY: length('the blank leaves the clamp, up', [-50, 50]),
});

export const wallMarks = many('Mark of a wall', {
  order: order(),
  wall: row('wall', 'walls'),
  number: count('number of the mark', [1, 24]),
  atX: length('to the right', [-50, 50]),
  atY: length('up', [-50, 50]),
});
