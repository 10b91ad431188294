/** What the page and the worker that looks at pictures say to each other. */

import type {
  EndsAnswer,
  EndsKnown,
  FoundMark,
  LiveKnown,
  LiveLook,
  Refused,
  Traced,
  TraceLost,
} from '../../../image/index.ts';
import type { TraceRequest } from '../../../image/trace/trace-request.ts';

export interface TraceTask {
  does: 'trace';
  /** Where the picture is fetched from. */
  address: string;
  request: TraceRequest;
  /** How far the blank's plane stands in front of the marks, towards the camera. */
  standOffM: number;
  /** To be told in the blank's plane as well. */
  rings: readonly { guide: string | undefined; px: [number, number] }[];
}
export interface TraceAnswer {
  traced: Traced | TraceLost | Refused;
  rings: { guide: string | undefined; px: [number, number]; xM: number; yM: number; sigmaM: number }[];
  /** Camera to the marks' plane, where a camera was fitted. */
  cameraAwayM: number | undefined;
}
/** Looks for printed reference marks. */
export interface FindTask {
  does: 'find';
  address: string;
  /** A picture that is nowhere but here; then the address is its name. */
  blob?: Blob;
}
/** Looks for the blank's ends where marks and clamp tell where it must be. */
export interface EndsTask {
  does: 'ends';
  address: string;
  known: EndsKnown;
}
/** One frame of a camera; nothing of it is kept. */
export interface LiveTask {
  does: 'live';
  frame: ImageBitmap;
  known: LiveKnown;
}
export type PhotoTask = TraceTask | FindTask | EndsTask | LiveTask;
interface Answers {
  trace: TraceAnswer;
  find: FoundMark[];
  ends: EndsAnswer;
  live: LiveLook;
}
export type PhotoAnswer<T extends PhotoTask> = Answers[T['does']];

export interface PhotoProgress {
  stage: 'picture' | 'marks' | 'camera' | 'ridges' | 'path' | 'edges' | 'done';
  share: number;
}
export interface ToPhotoWorker {
  id: number;
  task: PhotoTask;
}
export type FromPhotoWorker =
  | { id: number; says: 'progress'; progress: PhotoProgress }
  | { id: number; says: 'done'; answer: PhotoAnswer<PhotoTask> }
  | { id: number; says: 'failed'; reason: string };
