/** Three rendered pictures of one bare blank, traced as the door traces them: the set-ups a fit takes. */
import jpeg from 'jpeg-js';
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitCurveSetup } from '../../src/engine/stiffness/request.ts';
import { decodeImage } from '../../src/image/decode/decode-image.ts';
import { type Traced, traceImage } from '../../src/image/trace/trace-image.ts';
import type { BentBlank } from '../render/bent-blank.ts';
import type { Place } from '../render/canvas.ts';
import type { Picture } from '../render/develop.ts';
import { type Curve, type TrueBlank, trueCurve } from './simulated-bench.ts';

export interface Scene {
  camera: { project(place: Place): Place };
  marks: Place[];
  paint(blank: BentBlank, index: number, hangs: boolean): Picture;
}
export interface RenderedChoice {
  seed: number;
  widthPx: number;
  hungKg: readonly number[];
  toldM: number;
  tapPx: number;
  tiltRad: number;
}
export interface RenderedStand {
  setups: FitCurveSetup[];
  traces: Traced[];
  curves: Curve[];
  tiltRad: number;
}

/** `sceneOf` is the renderer. Undefined where a picture could not be traced. */
export function renderedStand(
  blank: TrueBlank,
  choice: RenderedChoice,
  sceneOf: (blanks: readonly BentBlank[]) => Scene,
): RenderedStand | undefined {
  const normal = seededNormal(seededRandom(choice.seed));
  const tiltRad = choice.tiltRad * normal();
  const curves = choice.hungKg.map((massKg) =>
    trueCurve(blank, {
      buttAngleRad: tiltRad,
      clampFromTipM: blank.lengthM,
      turnedRad: 0,
      hung: massKg > 0 ? [{ fromTipM: 0, massKg }] : [],
    }),
  );
  const bent = curves.map((curve) => bentOf(blank, curve));
  const scene = sceneOf(bent);
  const told = scene.marks.map(({ x, y }): [number, number] => [
    x + choice.toldM * normal(),
    y + choice.toldM * normal(),
  ]);
  const tap = (place: Place): [number, number] => {
    const at = scene.camera.project(place);
    return [at.x + choice.tapPx * normal(), at.y + choice.tapPx * normal()];
  };
  const traces: Traced[] = [];
  for (const [i, one] of bent.entries()) {
    const answer = traceImage(
      {
        marks: scene.marks.map((mark, k) => ({ px: tap(mark), atM: told[k] })),
        ends: { butt: tap(one.axis[0]), tip: tap(one.axis[one.axis.length - 1]) },
      },
      pixelsOf(scene.paint(one, i, choice.hungKg[i] > 0)),
    );
    if (answer.status !== 'converged') return undefined;
    traces.push(answer);
  }
  const setups = traces.map(
    ({ points }, i): FitCurveSetup => ({
      kind: 'curve',
      shared: 'the wall',
      nominalAngleRad: 0,
      tiltSigmaRad: choice.tiltRad,
      tests: [{ hung: choice.hungKg[i] > 0 ? [{ fromTipM: 0, massKg: choice.hungKg[i] }] : [], points }],
    }),
  );
  return { setups, traces, curves, tiltRad };
}

export function bentOf(blank: TrueBlank, { xM, yM, fromTipM }: Curve): BentBlank {
  const last = xM.length - 1;
  return {
    axis: Array.from(xM, (x, i) => ({ x, y: yM[i] })),
    radiusM: Array.from(fromTipM, (s) => 0.5 * blank.outsideM(s)),
    angleRad: Array.from(xM, (_, i) => {
      const j = Math.min(last - 1, i);
      return Math.atan2(yM[j + 1] - yM[j], xM[j + 1] - xM[j]);
    }),
    lengthM: blank.lengthM,
  };
}

/** Through a JPEG file, as a telephone keeps it. */
function pixelsOf({ width, height, rgb }: Picture) {
  const data = new Uint8Array(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  const answer = decodeImage(jpeg.encode({ width, height, data }, 88).data);
  if (answer.status !== 'converged') throw new Error('the rendered picture is no JPEG file');
  return answer.pixels;
}
