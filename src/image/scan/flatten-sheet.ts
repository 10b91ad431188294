/**
 * A telephone's picture of the reference sheet, made flat like a scan.
 *
 * The four marks' middles fix the homography from the sheet's plane to the picture; the paper between them is drawn
 * anew at an even resolution by bilinear interpolation. Assumptions: the sheet lies flat, the lens keeps straight
 * lines straight (telephones correct their own pictures), and feet lie on the paper.
 */

import type { Finding } from '../../engine/finding.ts';
import { bagSheet } from '../../engine/wall-mark/bag-marks.ts';
import { type Homography, homographyApply, homographyFit } from '../camera/homography.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import { type FoundMark, findMarks } from '../marks/find-marks.ts';
import type { Pixels } from '../pixels.ts';

export interface FlatSheet {
  status: 'converged';
  pixels: Pixels;
  /** Resolution it was drawn at. */
  dpi: number;
  findings: Finding[];
}

/** Enough for a tenth of a millimetre, and about what a telephone sees of the sheet. */
const flatDpi = 400;
const leastSeenDpi = 200;

/** Refused, naming the marks, where one of the four is not seen. */
export function flattenSheet(pixels: Pixels, onProgress?: (share: number) => void): FlatSheet | Refused {
  const found = findMarks(pixels, { onProgress });
  const seen = bagSheet.marks.map((mark) => ({
    mark,
    at: found.find(({ number }) => number === mark.number),
  }));
  const missing = seen.filter(({ at }) => at === undefined).map(({ mark }) => mark.number);
  if (missing.length > 0) return refusedWith([imageFound('image', 'scan/marks-unseen', { marks: missing })]);
  const places = seen.flatMap(({ mark, at }) => (at ? [{ mark, at }] : []));
  const { homography } = homographyFit(
    places.map(({ mark, at }) => ({
      plane: { x: mark.xM, y: mark.yM },
      picture: { x: at.centrePx[0], y: at.centrePx[1] },
    })),
  );
  const seenDpi = resolutionSeen(places.map(({ at }) => at));
  const findings: Finding[] =
    seenDpi < leastSeenDpi ? [imageFound('image', 'scan/sheet-small', { dpi: Math.round(seenDpi) })] : [];
  return { status: 'converged', pixels: drawnFlat(pixels, homography), dpi: flatDpi, findings };
}

/** Pixels to the inch in the picture, from the size its rings have there. */
function resolutionSeen(marks: readonly FoundMark[]): number {
  const radiusPx = marks.reduce((sum, mark) => sum + mark.radiusPx, 0) / marks.length;
  return (radiusPx / bagSheet.radiusM) * 0.0254;
}

function drawnFlat(pixels: Pixels, homography: Homography): Pixels {
  const perM = flatDpi / 0.0254;
  const { halfWidthM, halfHeightM } = bagSheet;
  const [width, height] = [Math.round(2 * halfWidthM * perM), Math.round(2 * halfHeightM * perM)];
  const data = new Uint8Array(width * height * 3);
  let to = 0;
  for (let row = 0; row < height; row++) {
    const y = halfHeightM - (row + 0.5) / perM;
    for (let column = 0; column < width; column++) {
      const at = homographyApply(homography, { x: (column + 0.5) / perM - halfWidthM, y });
      for (let channel = 0; channel < 3; channel++) data[to++] = sampled(pixels, at.x, at.y, channel);
    }
  }
  return { width, height, channels: 3, data };
}

/** Between the four pixels round a place; the picture's edge goes on outwards. */
function sampled({ width, height, channels, data }: Pixels, x: number, y: number, channel: number): number {
  const clamped = (value: number, most: number) => Math.max(0, Math.min(most, value));
  const [left, top] = [clamped(Math.floor(x), width - 1), clamped(Math.floor(y), height - 1)];
  const [right, bottom] = [Math.min(width - 1, left + 1), Math.min(height - 1, top + 1)];
  const [u, v] = [clamped(x - left, 1), clamped(y - top, 1)];
  const offset = channels === 1 ? 0 : channel;
  const value = (column: number, row: number) => data[(row * width + column) * channels + offset];
  return (
    (1 - v) * ((1 - u) * value(left, top) + u * value(right, top)) +
    v * ((1 - u) * value(left, bottom) + u * value(right, bottom))
  );
}
