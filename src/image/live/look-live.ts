/**
 * One frame of a camera that stays on its stand: which marks it shows, where the blank's ends are and how it bends. The
 * marks are found by themselves; their places were measured with the wall.
 */
import type { Finding } from '../../engine/finding.ts';
import type { Camera } from '../camera/camera-model.ts';
import { marksToCamera } from '../camera/marks-check.ts';
import type { EndsKnown } from '../ends/ends-known.ts';
import { findEnds } from '../ends/find-ends.ts';
import { type FoundMark, findMarks } from '../marks/find-marks.ts';
import type { Pixels } from '../pixels.ts';
import { coarseRidges } from '../trace/coarse-path.ts';
import { traceImage } from '../trace/trace-image.ts';
import type { TracedPoint, TraceRequest } from '../trace/trace-request.ts';

export interface LiveKnown {
  /** The wall's marks by their printed numbers. */
  wall: readonly { number: number; atM: readonly [number, number] }[];
  /** Along the blank from the clamp or grip to the tip. */
  lengthM: number;
  /** Where it leaves the clamp or grip, once that is known. */
  clamp?: EndsKnown['clamp'];
  /** Tapped, where nothing else tells; they count before the clamp. */
  ends?: TraceRequest['ends'];
}

export interface LiveMark {
  number: number;
  px: [number, number];
  radiusPx: number;
  /** Whether its place on the wall is known. */
  known: boolean;
}

export type LiveLook = { widthPx: number; heightPx: number; marks: LiveMark[] } & (
  | { status: 'traced'; points: TracedPoint[]; camera: Camera; findings: Finding[] }
  /** Fewer than four marks of known place. */
  | { status: 'few-marks' }
  /** Nothing tells where the blank is: butt and tip are to be tapped. */
  | { status: 'taps-wanted'; findings: Finding[] }
  | { status: 'lost'; findings: Finding[] }
);

export function lookLive(pixels: Pixels, known: LiveKnown): LiveLook {
  const seen = findMarks(pixels);
  const marks = seen.map((mark): LiveMark => liveMark(mark, known));
  const picture = { widthPx: pixels.width, heightPx: pixels.height };
  const size = { ...picture, marks };
  const placed = known.wall.flatMap(({ number, atM }) => {
    const [mark, again] = seen.filter((one) => one.number === number);
    return mark && !again ? [{ px: mark.centrePx, atM }] : [];
  });
  if (placed.length < 4) return { ...size, status: 'few-marks' };
  const camera = marksToCamera(
    placed.map(({ px: [x, y], atM }) => ({ pixel: { x, y }, plane: { x: atM[0], y: atM[1] } })),
    picture,
  );
  if (camera.status === 'refused') return { ...size, status: 'lost', findings: camera.findings };
  const ridges = coarseRidges(pixels);
  const ends = endsOf(known, placed, pixels, ridges);
  if ('findings' in ends) return { ...size, status: 'taps-wanted', findings: ends.findings };
  const traced = traceImage({ marks: placed, ends }, pixels, { ridges });
  if (traced.status !== 'converged') return { ...size, status: 'lost', findings: traced.findings };
  const { points, findings } = traced;
  return { ...size, status: 'traced', points, camera: camera.fit.camera, findings };
}

function liveMark({ number, centrePx, radiusPx }: FoundMark, { wall }: LiveKnown): LiveMark {
  return { number, px: centrePx, radiusPx, known: wall.some((one) => one.number === number) };
}

function endsOf(
  { ends, clamp, lengthM }: LiveKnown,
  marks: TraceRequest['marks'],
  pixels: Pixels,
  ridges: ReturnType<typeof coarseRidges>,
): TraceRequest['ends'] | { findings: Finding[] } {
  if (ends) return ends;
  if (!clamp) return { findings: [] };
  const found = findEnds({ marks, lengthM, clamp }, pixels, ridges);
  return found.status === 'found' ? found.ends : { findings: found.findings };
}
