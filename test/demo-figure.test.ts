import { expect, test } from 'vitest';
import { openBuild } from '../src/cli/open-build.ts';
import { workBuildFile } from '../src/cli/work-build-file.ts';
import type { RuledLoad } from '../src/engine/layout/rule-reading.ts';

/**
 * The first page shows the demo bent, from numbers kept in a file so that it needs no engine. Here they are worked
 * out again from the demo; after a change of the demo `npx vitest run test/demo-figure.test.ts -u` writes them anew.
 */
test('the first page’s figure is the demo under its heaviest load, as the engine bends it', async () => {
  const { bench, work } = workBuildFile(openBuild('examples/demo-build.json'));
  const { question, readings } = work;
  const heaviest = (reading: typeof readings.best | undefined) => reading?.loads.at(-1) as RuledLoad;
  const [ours, start] = [readings.own, readings.start].map(heaviest);
  expect([ours.status, start.status]).toEqual(['converged', 'converged']);
  const mm = (lengthM: number) => Math.round(1000 * lengthM);
  // On the screen the tip points left and y runs down.
  const point = (xM: number, yM: number) => `${mm(-xM)} ${mm(-yM)}`;
  const every = Math.ceil(ours.xM.length / 60);
  const nodes = Array.from(ours.xM, (_, i) => i).filter((i) => i % every === 0 || i === ours.xM.length - 1);
  const { reel, buttAngleRad, limits } = question.request;
  const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  const underButt = (alongM: number, offM: number) => ({
    xM: alongM * c + offM * s,
    yM: alongM * s - offM * c,
  });
  const leaves = underButt(reel.alongM, reel.offsetM);
  const butt = underButt(-bench.handle.gripFrontFromButtM, 0);
  // Neither the tip-top's angle counts, which the pull sets, nor the last guide's, which reel and hand set.
  const degrees = ({ rings }: RuledLoad) =>
    rings.slice(1, -1).map(({ lineAngleRad }) => Number(((180 * lineAngleRad) / Math.PI).toFixed(2)));
  const file = `/** The demo under its heaviest load, front of the grip at 0, millimetres; made by test/demo-figure.test.ts. */
export const demoBend = {
  loadGrams: ${mm(question.loads.kg.at(-1) ?? 0)},
  limitDegrees: ${((180 * limits.lineAngleRad) / Math.PI).toFixed(0)},
  rod: 'M${nodes.map((i) => point(ours.xM[i], ours.yM[i])).join('L')}',
  line: 'M${[...ours.rings, leaves].map(({ xM, yM }) => point(xM, yM)).join('L')}',
  grip: 'M0 0L${point(butt.xM, butt.yM)}',
  ringXmm: [${ours.rings.map(({ xM }) => mm(-xM)).join(', ')}],
  ringYmm: [${ours.rings.map(({ yM }) => mm(-yM)).join(', ')}],
  reelXmm: ${mm(-leaves.xM)},
  reelYmm: ${mm(-leaves.yM)},
  startDegrees: [${degrees(start).join(', ')}],
  ourDegrees: [${degrees(ours).join(', ')}],
};
`;
  await expect(file).toMatchFileSnapshot('../src/web/steps/shelf/demo-bend.ts');
});
