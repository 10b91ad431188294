export type { Finding } from '../engine/finding.ts';
export { type Camera, cameraBackProject, cameraProject } from './camera/camera-model.ts';
export { marksToCamera } from './camera/marks-check.ts';
export { type PlaneOfMarks, type PlaneRequest, planeOfMarks } from './camera/plane-of-marks.ts';
export { cameraAwayM, cameraOverPlane } from './camera/stand-off.ts';
export { checkWall, type WallChecked } from './camera/wall-check.ts';
export { type Decoded, type DecodeLimits, decodeImage, decodeLimits } from './decode/decode-image.ts';
export type { EndsKnown } from './ends/ends-known.ts';
export { type EndsAnswer, findEnds } from './ends/find-ends.ts';
export type { Refused } from './finding.ts';
export { type LiveKnown, type LiveLook, lookLive } from './live/look-live.ts';
export { type FindMarksOptions, type FoundMark, findMarks } from './marks/find-marks.ts';
export type { Pixels } from './pixels.ts';
export { type FlatSheet, flattenSheet } from './scan/flatten-sheet.ts';
export {
  type Scanned,
  type ScannedGuide,
  type ScanOptions,
  type ScanRequest,
  scanImage,
} from './scan/scan-image.ts';
export { type StrippedPicture, stripPicture } from './strip/strip-picture.ts';
export { type CoarseRidges, coarseRidges } from './trace/coarse-path.ts';
export { type Traced, type TraceLost, type TraceOptions, traceImage } from './trace/trace-image.ts';
export type { TracedPoint, TraceRequest } from './trace/trace-request.ts';
