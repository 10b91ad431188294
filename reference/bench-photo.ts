/** Times the trace of a painted photograph, 12 MP and 48 MP, and frames of a camera on its stand, in process; decoding is told apart. */
import jpeg from 'jpeg-js';
import { decodeImage } from '../src/image/decode/decode-image.ts';
import { lookLive } from '../src/image/live/look-live.ts';
import { traceImage } from '../src/image/trace/trace-image.ts';
import { enlarged } from '../test/render/enlarge.ts';
import { type Photo, paintPhoto } from '../test/render/photo.ts';
import { liveScene } from '../test/support/live-scene.ts';

export interface PhotoTimes {
  /** Medians, seconds on the clock and of the processor. */
  trace: Seconds;
  decode: Seconds;
  trace48: Seconds;
  /** Marks, ends and curve of a picture of 12 MP, and of a frame of 2 MP. */
  look12: Seconds;
  look2: Seconds;
}

interface Seconds {
  wall: number;
  processor: number;
}

export function timePhoto(times: number): PhotoTimes {
  const photo = paintPhoto({ seed: 1001, widthPx: 4000, heightPx: 3000, marks: 6, strange: true });
  const file = jpegOf(photo);
  const large = enlarged(photo, 2);
  return {
    trace: medianOf(times, () => traced(photo)),
    decode: medianOf(times, () => {
      const answer = decodeImage(file);
      if (answer.status !== 'converged') throw new Error(answer.findings[0].message);
    }),
    trace48: medianOf(Math.min(3, times), () => traced(large)),
    look12: medianOf(times, looking(4000)),
    look2: medianOf(times, looking(1600)),
  };
}

/** A weight hangs; nothing but the clamp's place, the wall and the length is known. */
function looking(widthPx: number): () => void {
  const { frame, known } = liveScene(33, widthPx);
  const pixels = frame(1);
  return () => {
    const { status } = lookLive(pixels, known);
    if (status !== 'traced') throw new Error(`the frame was not read: ${status}`);
  };
}

function traced({ picture, marks, ends }: Photo): void {
  const { width, height, rgb: data } = picture;
  const answer = traceImage({ marks, ends }, { width, height, channels: 3, data });
  if (answer.status !== 'converged') throw new Error(answer.findings[0].message);
}

function jpegOf({ picture: { width, height, rgb } }: Photo): Buffer {
  const data = new Uint8Array(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return jpeg.encode({ width, height, data }, 92).data;
}

/** The first run warms up and does not count. */
function medianOf(times: number, run: () => void): Seconds {
  const runs = Array.from({ length: times + 1 }, () => {
    const [started, before] = [performance.now(), process.cpuUsage()];
    run();
    const { user, system } = process.cpuUsage(before);
    return { wall: (performance.now() - started) / 1e3, processor: (user + system) / 1e6 };
  }).slice(1);
  const middle = (of: (one: Seconds) => number) => runs.map(of).sort((a, b) => a - b)[runs.length >> 1];
  return { wall: middle((one) => one.wall), processor: middle((one) => one.processor) };
}
