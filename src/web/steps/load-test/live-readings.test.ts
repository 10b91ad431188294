import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { assembleBlank } from '../../../engine/bench/assemble.ts';
import { diameterProfile } from '../../../engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../../../engine/bench/estimate.ts';
import { spaceRequestOf } from '../../../engine/layout/laid-bend.ts';
import { bendInSpace } from '../../../engine/space/bend-in-space.ts';
import { readBuildFile } from '../../../record/file-read.ts';
import { readBuild } from '../../../record/read-build.ts';
import { spiralLiveWords } from '../../../words/live.ts';
import { sheetModel } from '../../read/sheet-model.ts';
import { lastGuideRead, liveReadings } from './live-readings.ts';

/** The invented casting rod: guides 1 to 7 under, 8 and 9 on their way to guide 10 on top. */
const model = (() => {
  const demo = new URL('../../../../examples/demo-casting-spiral.json', import.meta.url);
  const file = readBuildFile(readFileSync(demo, 'utf8'), '2026-01-01T00:00:00Z');
  if (file.status === 'refused') throw new Error(file.findings[0].message);
  const { bench, choices } = readBuild(file.build.state);
  if (!bench || !choices) throw new Error('the build makes no bench');
  const profile = diameterProfile(bench.sections, assembleBlank(bench.sections));
  return sheetModel({ bench, choices, tables: estimateFromDiameters(profile, bench.material) })!;
})();

test('of a spiral a picture tells the angles of the guides under the rod, as the bend in space has them', () => {
  const { request, field } = model;
  const laid = { ladder: request, fromTipM: field.fromTipM };
  request.ladder.slice(1).forEach((load) => {
    const bent = bendInSpace(spaceRequestOf(laid, load));
    const seen = bent.points.map(({ xM, yM }) => {
      const px: [number, number] = [1000 * xM, -1000 * yM];
      return { xM, yM, sigmaM: 0.001, px, halfWidthPx: 3 };
    });
    const { rings, worstAngle, worstGap } = liveReadings(seen.reverse(), model);
    expect(rings.flatMap(({ ring, lineAngle }) => (lineAngle ? [ring] : []))).toEqual([1, 2, 3, 4, 5, 6]);
    for (const { ring, lineAngle } of rings.slice(1, 7)) {
      const off = Math.abs(lineAngle!.value - bent.rings[ring].lineAngleRad);
      expect(off).toBeLessThan(0.2 * (Math.PI / 180));
    }
    expect(worstAngle!.ring).toBeLessThanOrEqual(6);
    expect(worstGap!.ring).toBeLessThan(7);
  });
});

test('what is not read is said, and where to look instead', () => {
  expect(spiralLiveWords(lastGuideRead(model.request), 10)).toBe(
    'Guides 1 to 6 are read. From guide 7 to guide 10 the line turns round the blank, beside the picture’s plane: go by their figures on Layout, and look at them under load.',
  );
  expect(spiralLiveWords(0, 10)).toMatch(/^No guide of this spiral is read here\. From guide 1 /);
});
