/** Painted pictures with what a shop knows of its wall, for the ends that are found without taps. */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { EndsKnown } from '../../src/image/ends/ends-known.ts';
import type { Pixels } from '../../src/image/pixels.ts';
import type { TraceRequest } from '../../src/image/trace/trace-request.ts';
import type { Place } from '../render/canvas.ts';
import { paintPhoto } from '../render/photo.ts';
import { standScene } from '../render/stand-photo.ts';
import { bentOf } from './rendered-stand.ts';
import { randomBlank, trueCurve } from './simulated-bench.ts';
import { weightFor } from './stand-blank.ts';

export interface EndsPhoto {
  pixels: Pixels;
  known: EndsKnown;
  truth: { butt: Place; tip: Place };
  /** Pixels of the picture for a metre at the middle of the blank. */
  perM: number;
}

/** What is told: marks 2 mm wrong and a pixel off, the length to 3 mm, the clamp's place to 5 mm each way. */
const told = { markM: 0.002, markPx: 1, lengthM: 0.003, clampM: 0.005 };

/** Every other one a bare blank of a stand, in turns with nothing, a weight and more hung; the rest rods of all kinds. */
export function endsPhoto(seed: number, widthPx: number): EndsPhoto {
  const scene = seed % 2 === 0 ? standOf(seed, widthPx) : photoOf(seed, widthPx);
  const normal = seededNormal(seededRandom(seed + 5));
  const at = (place: Place, sigma: number): [number, number] => [
    place.x + sigma * normal(),
    place.y + sigma * normal(),
  ];
  const { axis, camera, picture, marks } = scene;
  const [butt, tip, middle] = [axis[0], axis[axis.length - 1], axis[axis.length >> 1]];
  const beside = camera.project({ x: middle.x + 0.01, y: middle.y });
  const { width, height, rgb } = picture;
  return {
    pixels: { width, height, channels: 3, data: rgb },
    known: {
      marks: marks.map((mark) => ({ px: at(camera.project(mark), told.markPx), atM: at(mark, told.markM) })),
      lengthM: scene.lengthM + told.lengthM * normal(),
      clamp: { atM: at(butt, told.clampM), sigmaM: told.clampM },
    },
    truth: { butt: camera.project(butt), tip: camera.project(tip) },
    perM: Math.hypot(beside.x - camera.project(middle).x, beside.y - camera.project(middle).y) / 0.01,
  };
}

function standOf(seed: number, widthPx: number) {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const thirdKg = weightFor(blank, 1 / 3);
  const bent = [0, thirdKg, 2.2 * thirdKg].map((massKg) =>
    bentOf(
      blank,
      trueCurve(blank, {
        buttAngleRad: 0,
        clampFromTipM: blank.lengthM,
        turnedRad: 0,
        hung: massKg > 0 ? [{ fromTipM: 0, massKg }] : [],
      }),
    ),
  );
  const { camera, marks, paint } = standScene(bent, { seed, widthPx, marks: 6 });
  const index = (seed >> 1) % 3;
  const { axis, lengthM } = bent[index];
  return { camera, marks, axis, lengthM, picture: paint(bent[index], index, index > 0) };
}

function photoOf(seed: number, widthPx: number) {
  const { picture, marks, axis, camera } = paintPhoto({ seed, widthPx, heightPx: 0.75 * widthPx, marks: 6 });
  let lengthM = 0;
  for (let i = 1; i < axis.length; i++)
    lengthM += Math.hypot(axis[i].x - axis[i - 1].x, axis[i].y - axis[i - 1].y);
  return { picture, axis, camera, lengthM, marks: marks.map(({ atM: [x, y] }) => ({ x, y })) };
}

/** How far found ends lie from the true ones, in the blank's plane. */
export function endMisses(
  { truth, perM }: EndsPhoto,
  { butt, tip }: TraceRequest['ends'],
): { butt: number; tip: number } {
  const miss = ([x, y]: readonly [number, number], at: Place) => Math.hypot(x - at.x, y - at.y) / perM;
  return { butt: miss(butt, truth.butt), tip: miss(tip, truth.tip) };
}
