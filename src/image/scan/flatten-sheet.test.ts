import { describe, expect, it } from 'vitest';
import { type GuideTruth, paintScan } from '../../../test/render/scan-sheet.ts';
import { photographSheet } from '../../../test/render/sheet-photo.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { bagSheet } from '../../engine/wall-mark/bag-marks.ts';
import { flattenSheet } from './flatten-sheet.ts';
import { scanImage } from './scan-image.ts';

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
  const photo = photographSheet(sheet, { tiltRad: 0.15, turnRad: 0.1 });
  it('tilted and turned, gives the guides’ feet as a flatbed does', () => {
    const flat = flattenSheet(photo);
    if (flat.status === 'refused') throw new Error(inWords(flat.findings[0]));
    expect(flat.findings).toEqual([]);
    const answer = scanImage({ dpi: flat.dpi }, flat.pixels);
    if (answer.status === 'refused') throw new Error(inWords(answer.findings[0]));
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
    expect(flat.status === 'refused' && inWords(flat.findings[0])).toMatch(/^Mark 23 is not seen\. /);
  }, 240_000);
});
