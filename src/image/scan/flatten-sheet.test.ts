import { describe, expect, it } from 'vitest';
import { type GuideTruth, paintScan, type ScanSheet } from '../../../test/render/scan-sheet.ts';
import { bagSheet } from '../../engine/wall-mark/bag-marks.ts';
import { wallMarkOutlines } from '../../engine/wall-mark/wall-mark.ts';
import type { Pixels } from '../pixels.ts';
import { flattenSheet } from './flatten-sheet.ts';
import { scanImage } from './scan-image.ts';

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
function photograph(sheet: ScanSheet, view: { tiltRad: number; turnRad: number }): Pixels {
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

/** Larger than what is read, so that its own edge does not lie in it. */
const sheet = paintScan({ seed: 11, guides: 3, dpi: 400, widthMm: 124, heightMm: 88, darkGround: false });
const placeOf = ({ centrePx: [x, y] }: GuideTruth) => ({
  xM: ((x - sheet.picture.width / 2) / sheet.dpi) * 0.0254,
  yM: ((y - sheet.picture.height / 2) / sheet.dpi) * 0.0254,
});
const wholly = sheet.guides.filter((guide) => {
  const { xM, yM } = placeOf(guide);
  const half = guide.lengthM / 2 + 0.002;
  return Math.abs(xM) + half < bagSheet.halfWidthM && Math.abs(yM) + half < bagSheet.halfHeightM;
});

describe('a picture of the reference sheet', () => {
  const photo = photograph(sheet, { tiltRad: 0.15, turnRad: 0.1 });
  it('tilted and turned, gives the guides’ feet as a flatbed does', () => {
    const flat = flattenSheet(photo);
    if (flat.status === 'refused') throw new Error(flat.findings[0].message);
    expect(flat.findings).toEqual([]);
    const answer = scanImage({ dpi: flat.dpi }, flat.pixels);
    if (answer.status === 'refused') throw new Error(answer.findings[0].message);
    expect(wholly.length).toBeGreaterThanOrEqual(2);
    expect(answer.guides.length).toBeLessThanOrEqual(sheet.guides.length);
    for (const guide of wholly) {
      const { xM, yM } = placeOf(guide);
      const x = (xM / 0.0254) * flat.dpi + flat.pixels.width / 2;
      const y = (yM / 0.0254) * flat.dpi + flat.pixels.height / 2;
      const found = answer.guides.find(({ centrePx }) => Math.hypot(centrePx[0] - x, centrePx[1] - y) < 40);
      if (!found) throw new Error(`the guide at ${x}, ${y} was not found`);
      expect(Math.abs(found.lengthM / guide.lengthM - 1)).toBeLessThan(0.03);
      expect(1000 * Math.abs(Math.abs(found.offsetM) - Math.abs(guide.offsetM))).toBeLessThan(0.2);
      expect((180 / Math.PI) * Math.abs(Math.abs(found.angleRad) - Math.abs(guide.angleRad))).toBeLessThan(2);
    }
  }, 240_000);
  it('without one of its marks is refused, naming it', () => {
    const { width, height, data } = photo;
    // A sheet of paper over the lower left corner.
    const covered = data.map((value, at) => {
      const [x, y] = [Math.floor(at / 3) % width, Math.floor(at / 3 / width)];
      return x < width * 0.3 && y > height * 0.7 ? 236 : value;
    });
    const flat = flattenSheet({ ...photo, data: covered });
    expect(flat.status === 'refused' && flat.findings[0].message).toMatch(/^mark 23 is not seen; /);
  }, 240_000);
});
