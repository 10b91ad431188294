/** The frame of a bent rod with room left above it for figures and fans. */
import type { BendView } from './bend-view.ts';
import { type DrawingFrame, drawingFrame, type Extent, type Room } from './drawing-frame.ts';
import { fanSizeFor } from './line-fans.ts';

/** The fans over the top of the drawn rod, whose size is of the screen and not of the rod, must not be cut off. */
export function withRoomAbove(view: BendView, extent: Extent, room: Room): DrawingFrame {
  const frame = drawingFrame(extent, room);
  const { clearPx, lengthPx } = fanSizeFor(room.widthPx);
  const highest = Math.max(...view.loads[view.drawn].rings.map(({ yM }) => yM));
  const missingPx = clearPx + lengthPx + figurePx - frame.yPx(highest);
  if (missingPx <= 0) return frame;
  return drawingFrame({ ...extent, highYM: extent.highYM + missingPx / frame.pxPerM }, room);
}

/** Of the figure over a fan. */
const figurePx = 22;

/** Room round the rod, the fans stand in it [m]. */
export const fanRoom = 0.26;

/** On a narrower drawing only the fans that matter are named. */
export const roomyPx = 520;
