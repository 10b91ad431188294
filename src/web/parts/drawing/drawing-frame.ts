/**
 * From the rod's plane to the screen, true to scale: one scale for both directions.
 *
 * The rod points left, so that the tip is left and the grip right as on the ruler below it. Metres: origin at
 * the front of the grip, x the way the rod points, y up. Pixels: origin top left.
 */
export interface Extent {
  lowXM: number;
  highXM: number;
  lowYM: number;
  highYM: number;
}
export interface DrawingFrame {
  widthPx: number;
  heightPx: number;
  pxPerM: number;
  xPx(xM: number): number;
  yPx(yM: number): number;
  xM(xPx: number): number;
  yM(yPx: number): number;
}
export interface Room {
  widthPx: number;
  /** The drawing takes less where the width decides the scale. */
  mostHeightPx: number;
  marginPx: number;
}

export function drawingFrame(extent: Extent, { widthPx, mostHeightPx, marginPx }: Room): DrawingFrame {
  const acrossM = extent.highXM - extent.lowXM;
  const upM = extent.highYM - extent.lowYM;
  const pxPerM = Math.min((widthPx - 2 * marginPx) / acrossM, (mostHeightPx - 2 * marginPx) / upM);
  const heightPx = Math.ceil(upM * pxPerM + 2 * marginPx);
  const right = (widthPx + acrossM * pxPerM) / 2;
  const xPx = (xM: number) => right - (xM - extent.lowXM) * pxPerM;
  const yPx = (yM: number) => marginPx + (extent.highYM - yM) * pxPerM;
  return {
    widthPx,
    heightPx,
    pxPerM,
    xPx,
    yPx,
    xM: (px) => extent.lowXM + (right - px) / pxPerM,
    yM: (px) => extent.highYM - (px - marginPx) / pxPerM,
  };
}

export interface OutlinedShape {
  xM: ArrayLike<number>;
  yM: ArrayLike<number>;
}

/** The box that holds all shapes and points; `roomM` is kept free around it. */
export function extentOf(
  shapes: readonly OutlinedShape[],
  points: readonly { xM: number; yM: number }[],
  roomM: number,
): Extent {
  const extent = { lowXM: Infinity, highXM: -Infinity, lowYM: Infinity, highYM: -Infinity };
  const take = (xM: number, yM: number) => {
    extent.lowXM = Math.min(extent.lowXM, xM - roomM);
    extent.highXM = Math.max(extent.highXM, xM + roomM);
    extent.lowYM = Math.min(extent.lowYM, yM - roomM);
    extent.highYM = Math.max(extent.highYM, yM + roomM);
  };
  for (const { xM, yM } of shapes) for (let i = 0; i < xM.length; i++) take(xM[i], yM[i]);
  for (const { xM, yM } of points) take(xM, yM);
  return extent;
}
