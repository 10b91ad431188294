import { bagSheet } from '../../src/engine/wall-mark/bag-marks.ts';
import { wallMarkOutlines } from '../../src/engine/wall-mark/wall-mark.ts';
import type { Pixels } from '../../src/image/pixels.ts';
import type { ScanSheet } from './scan-sheet.ts';

type Plane = [x: number, y: number];

/** Even-odd rule over all rings of a mark. */
function insideMark(rings: readonly (readonly { x: number; y: number }[])[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [a, b] = [ring[i], ring[j]];
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    }
  }
  return inside;
}

/**
 * The sheet with a painted scan of guides in its middle, seen by a pinhole camera: every pixel's ray is met with the
 * sheet's plane and coloured by what lies there (four rays a pixel). No code of the reader is used but the marks' outlines.
 */
export function photographSheet(sheet: ScanSheet, view: { tiltRad: number; turnRad: number }): Pixels {
  const [width, height] = [1600, 1300];
  const [focalPx, awayM] = [1760, 0.21];
  const { tiltRad, turnRad } = view;
  const perM = sheet.dpi / 0.0254;
  const outlines = bagSheet.marks.map((mark) => ({ ...mark, rings: wallMarkOutlines(mark.number).rings }));
  const { picture } = sheet;
  const colourAt = ([x, y]: Plane): number => {
    const column = Math.round(x * perM + picture.width / 2 - 0.5);
    const row = Math.round(-y * perM + picture.height / 2 - 0.5);
    if (column >= 0 && row >= 0 && column < picture.width && row < picture.height) {
      return picture.rgb[3 * (row * picture.width + column)];
    }
    const near = outlines.find(({ xM, yM }) => Math.hypot(x - xM, y - yM) < 1.3 * bagSheet.radiusM);
    if (!near) return 236;
    const [u, v] = [(x - near.xM) / bagSheet.radiusM, (y - near.yM) / bagSheet.radiusM];
    return insideMark(near.rings, u, v) ? 28 : 236;
  };
  const planeOf = (px: number, py: number): Plane => {
    const [dx, dy] = [(px - width / 2) / focalPx, -(py - height / 2) / focalPx];
    const [rx, ry] = [
      dx * Math.cos(turnRad) - dy * Math.sin(turnRad),
      dx * Math.sin(turnRad) + dy * Math.cos(turnRad),
    ];
    // The camera looks down at an angle: its axis meets the sheet's middle.
    const [oy, oz] = [-awayM * Math.sin(tiltRad), awayM * Math.cos(tiltRad)];
    const ny = ry * Math.cos(tiltRad) + Math.sin(tiltRad);
    const nz = ry * Math.sin(tiltRad) - Math.cos(tiltRad);
    const t = -oz / nz;
    return [t * rx, oy + t * ny];
  };
  const data = new Uint8Array(width * height * 3);
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++) {
      let sum = 0;
      for (let k = 0; k < 4; k++)
        sum += colourAt(planeOf(px - 0.25 + 0.5 * (k & 1), py - 0.25 + 0.5 * (k >> 1)));
      data.fill(Math.round(sum / 4), 3 * (py * width + px), 3 * (py * width + px) + 3);
    }
  }
  return { width, height, channels: 3, data };
}
