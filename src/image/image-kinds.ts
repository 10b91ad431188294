import { findingsOf } from '../engine/finding.ts';

/** A mark of the request by its number from 1, or as the reader calls it. */
export type MarkName = number | string;
interface Pixel {
  xPx: number;
  yPx: number;
}
interface OutsidePicture extends Pixel {
  widthPx: number;
  heightPx: number;
}
type Nothing = Record<string, never>;

/** What can be wrong with a picture, or odd about what was read from it. */
export interface ImageKinds {
  'picture/unopened': { file: string; why: string };
  'picture/empty': Nothing;
  'picture/unknown-format': { bytes: number };
  'picture/other-format': { format: string };
  'picture/broken': { format: string; reason: string };
  'picture/large-file': { megabytes: number; most: number };
  'picture/small': { widthPx: number; heightPx: number; leastPx: number };
  'picture/many-pixels': { widthPx: number; heightPx: number; megapixels: number; most: number };

  'camera/mark-not-finite': Nothing;
  'camera/mark-outside': OutsidePicture;
  'camera/few-marks': { count: number };
  'camera/marks-on-line': Nothing;
  'camera/marks-nearly-on-line': Nothing;
  'camera/same-place': { mark: MarkName; otherMark: MarkName };
  'camera/same-pixel': { mark: MarkName; otherMark: MarkName };
  'camera/marks-disagree': { missM: number };
  'camera/marks-loose': { missM: number; times: number };
  'camera/mark-odd': {
    mark: MarkName;
    givenXM: number;
    givenYM: number;
    oughtXM: number;
    oughtYM: number;
    offM: number;
    axis: string;
  };

  'trace/tap-not-finite': Nothing;
  'trace/tap-outside': OutsidePicture;
  'trace/taps-close': { apartPx: number; from: string };
  'trace/lost': Pixel;
  'trace/nothing-at-tap': Pixel;
  'trace/edges-seldom': { share: number };
  'trace/stretch-unseen': Pixel & { fromPercent: number; toPercent: number };
  'trace/ends-swapped': Nothing;
  'trace/leaves-picture': Nothing;
  'trace/tip-blurred': { widerM: number };
  'trace/end-at-edge': { end: string };
  'trace/marks-vague': { plusMinusM: number };
  'trace/two-rods': Pixel;
  'trace/other-rod': {
    thickXPx: number;
    thickYPx: number;
    thinXPx: number;
    thinYPx: number;
    buttXPx: number;
    buttYPx: number;
    tipXPx: number;
    tipYPx: number;
  };

  'ends/length': { lengthM: number; leastM: number; mostM: number };
  'ends/clamp-outside': Pixel;
  'ends/no-line': Nothing;
  'ends/two-lines': Nothing;
  'ends/end-unclear': { end: string };

  'scan/resolution': { dpi: number };
  'scan/coarse': { dpi: number; pixelM: number };
  'scan/dpi-differs': { dpi: number; fileDpi: number };
  'scan/none-found': Nothing;
  'scan/touching': Pixel;
  'scan/too-large': Pixel & { acrossM: number };
  'scan/wrong-size': Pixel & { lengthM: number; leastM: number; mostM: number };
  'scan/marks-unseen': { marks: readonly number[] };
  'scan/sheet-small': { dpi: number };
  'scan/unreadable': { reason: string };
}

export const imageFound = findingsOf<ImageKinds>();
