/** Where places along and off the rod stand on the drawing of the line off the reel. */
import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../../../engine/flow/reel-line-question.ts';

export interface FanFrame {
  widthPx: number;
  heightPx: number;
  /** Of the view from the side. */
  sidePx: number;
  freeM: number;
  /** Ends of what is shown, along from the grip's front. */
  nearM: number;
  farM: number;
  /** Deepest place off the axis that is drawn. */
  deepM: number;
  /** Heights are drawn so many times taller than lengths. */
  taller: 1 | 2;
  /** 1 where the reel hangs under the blank. */
  down: 1 | -1;
  /** Middle of the view from above, which shows how far a level-wind moves; undefined for a fixed spool. */
  abovePx: number | undefined;
  /** Step of the region's columns. */
  stepM: number;
  x(alongM: number): number;
  /** A width as the view from above draws it. */
  acrossPx(widthM: number): number;
  /** Off the axis to the reel's side. */
  y(underM: number): number;
  alongAt(xPx: number): number;
}

export function fanFrame(
  { source, freeM, guides }: ReelLineQuestion,
  { region }: ReelLineAnswer,
  widthPx: number,
): FanFrame {
  const lipM = 'lipDiameterM' in source ? source.lipDiameterM : 0.03;
  const nearM = Math.min(source.alongM, 0) - 0.09;
  const places = region.heights.map(({ fromTipM }) => freeM - fromTipM);
  const nextM = freeM - guides[guides.length - 2].fromTipM;
  const farM = Math.max(nextM, ...places) + 0.04;
  const deepM = Math.max(source.offsetM + lipM * 0.6, ...region.heights.map(({ highestM }) => highestM));
  const taller = widthPx < 640 ? 2 : 1;
  const pxPerM = (widthPx - 12) / (farM - nearM);
  const down = 'lipDiameterM' in source ? 1 : -1;
  const roomPx = deepM * pxPerM * taller;
  const blankPx = 0.02 * pxPerM * taller + 34;
  const sidePx = roomPx + blankPx + 36;
  const axisPx = down > 0 ? blankPx : sidePx - blankPx;
  const windPx = 'lipDiameterM' in source ? 0 : source.widthM * pxPerM * taller;
  const abovePx = windPx > 0 ? sidePx + 14 + windPx / 2 : undefined;
  const [first, second] = region.heights;
  return {
    widthPx,
    heightPx: abovePx === undefined ? sidePx : sidePx + windPx + 28,
    sidePx,
    abovePx,
    freeM,
    nearM,
    farM,
    deepM,
    taller,
    down,
    stepM: first && second ? Math.abs(first.fromTipM - second.fromTipM) : 0.01,
    x: (alongM) => 6 + (farM - alongM) * pxPerM,
    acrossPx: (widthM) => widthM * pxPerM * taller,
    y: (underM) => axisPx + down * underM * pxPerM * taller,
    alongAt: (xPx) => farM - (xPx - 6) / pxPerM,
  };
}
