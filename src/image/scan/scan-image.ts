import type { Finding } from '../../engine/finding.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import type { Pixels } from '../pixels.ts';
import { differenceIn, type Ground, groundOf } from './ground.ts';
import { type Mask, type Patch, patchesOf } from './mask.ts';
import { type GuideReading, guideLimits, largestMm, measureGuide } from './measure-guide.ts';

export interface ScanRequest {
  /** Resolution of the scan, dots per inch. */
  dpi: number;
}

export interface ScanOptions {
  /** Resolution written in the file, to compare. */
  statedDpi?: number;
  onProgress?(progress: { stage: 'ground' | 'guides' | 'done'; share: number }): void;
}

export interface ScannedGuide {
  centrePx: [number, number];
  lengthM: number;
  /** Distance between the feet's middles square to the mean of their axes. */
  offsetM: number;
  /** Between the two feet's axes seen from above. */
  angleRad: number;
  /** 0..1; below about 0.5 look at the guide again. */
  quality: number;
}

export interface Scanned {
  status: 'converged';
  /** From top to bottom, then left to right. */
  guides: ScannedGuide[];
  findings: Finding[];
}

/** Finds and measures the two-footed guides lying apart on a flatbed scan. */
export function scanImage(
  request: ScanRequest,
  pixels: Pixels,
  options: ScanOptions = {},
): Scanned | Refused {
  const { dpi } = request;
  if (!(dpi >= 100 && dpi <= 2400)) {
    return refusedWith([imageFound('dpi', 'scan/resolution', { dpi })]);
  }
  const progress = options.onProgress ?? (() => {});
  progress({ stage: 'ground', share: 0 });
  const ground = groundOf(pixels);
  const factor = Math.max(1, Math.round(dpi / 300));
  const perMm = dpi / 25.4;
  const windows = candidateWindows(pixels, ground, factor, perMm);
  progress({ stage: 'guides', share: 0.3 });
  const guides: ScannedGuide[] = [];
  const findings: Finding[] = resolutionFindings(request, options.statedDpi);
  for (const [i, window] of windows.entries()) {
    const reading = readWindow(pixels, ground, window, perMm);
    if (reading.kind === 'guide') guides.push(guideOf(reading, window, perMm));
    else findings.push(...readingFindings(reading, window));
    progress({ stage: 'guides', share: 0.3 + (0.7 * (i + 1)) / windows.length });
  }
  if (guides.length === 0) findings.push(imageFound('image', 'scan/none-found', {}));
  guides.sort((a, b) => a.centrePx[1] - b.centrePx[1] || a.centrePx[0] - b.centrePx[0]);
  progress({ stage: 'done', share: 1 });
  return { status: 'converged', guides, findings };
}

/** Ground around a patch. */
const marginMm = 1.5;

interface Window {
  left: number;
  top: number;
  width: number;
  height: number;
  touchesBorder: boolean;
}

/** Boxes round everything large enough to be a guide, at about 300 dpi, with room for the ground around it. */
function candidateWindows(pixels: Pixels, ground: Ground, factor: number, perMm: number): Window[] {
  const whole = { left: 0, top: 0, width: pixels.width, height: pixels.height };
  const difference = differenceIn(pixels, ground, whole, factor);
  const level = Math.max(10, (6 * ground.noise) / Math.sqrt(factor));
  const mask: Mask = {
    width: difference.width,
    height: difference.height,
    inside: Uint8Array.from(difference.values, (value) => (value > level ? 1 : 0)),
  };
  const { patches } = patchesOf(closed(mask, Math.max(1, Math.round((0.12 * perMm) / factor))));
  const cellMm2 = (factor / perMm) ** 2;
  return patches
    .filter(
      (patch) =>
        patch.area * cellMm2 > 2 && diagonal(patch) * (factor / perMm) > 0.3 * guideLimits.leastLengthMm,
    )
    .map((patch) => windowOf(patch, pixels, factor, Math.round(marginMm * perMm)));
}

/** Joins what is parted by less than twice the radius: a highlight can cut a wire in two. */
function closed(mask: Mask, radius: number): Mask {
  const { width, height } = mask;
  const rows = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (!mask.inside[y * width + x]) continue;
      rows.fill(1, y * width + Math.max(0, x - radius), y * width + Math.min(width - 1, x + radius) + 1);
    }
  }
  const inside = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let k = Math.max(0, y - radius); k <= Math.min(height - 1, y + radius); k++) {
      for (let x = 0; x < width; x++) if (rows[k * width + x]) inside[y * width + x] = 1;
    }
  }
  return { width, height, inside };
}

function diagonal(patch: Patch): number {
  return Math.hypot(patch.right - patch.left + 1, patch.bottom - patch.top + 1);
}

function windowOf(patch: Patch, pixels: Pixels, factor: number, marginPx: number): Window {
  const left = Math.max(0, patch.left * factor - marginPx);
  const top = Math.max(0, patch.top * factor - marginPx);
  const right = Math.min(pixels.width, (patch.right + 1) * factor + marginPx);
  const bottom = Math.min(pixels.height, (patch.bottom + 1) * factor + marginPx);
  const near = 2 * factor;
  const touchesBorder =
    patch.left * factor < near ||
    patch.top * factor < near ||
    (patch.right + 1) * factor > pixels.width - near ||
    (patch.bottom + 1) * factor > pixels.height - near;
  return { left, top, width: right - left, height: bottom - top, touchesBorder };
}

/** Edges are read at about 600 dpi and the shape at about 300: more only costs time. */
function readWindow(pixels: Pixels, ground: Ground, window: Window, perMm: number): GuideReading {
  // a card, a frame, a lid's edge: reading its shape would take minutes
  const across = acrossMm(window, perMm);
  if (across > largestMm(guideLimits)) return { kind: 'too-large', acrossMm: across };
  const factor = fineFactor(perMm);
  const ratio = perMm / factor > 16 ? 2 : 1;
  return measureGuide({
    fine: differenceIn(pixels, ground, window, factor),
    coarse: differenceIn(pixels, ground, window, factor * ratio),
    ratio,
    finePerMm: perMm / factor,
    noise: ground.noise / Math.sqrt(factor * ratio),
  });
}

/** Corner to corner of what lies in the window, without the ground around it. */
function acrossMm({ width, height }: Window, perMm: number): number {
  return Math.hypot(width / perMm - 2 * marginMm, height / perMm - 2 * marginMm);
}

function fineFactor(perMm: number): number {
  return Math.max(1, Math.round(perMm / 24));
}

function guideOf(reading: GuideReading & { kind: 'guide' }, window: Window, perMm: number): ScannedGuide {
  const factor = fineFactor(perMm);
  const { x, y, lengthPx, offsetPx, angleRad, quality } = reading.measured;
  const toM = factor / perMm / 1e3;
  return {
    centrePx: [window.left + factor * (x + 0.5) - 0.5, window.top + factor * (y + 0.5) - 0.5],
    lengthM: lengthPx * toM,
    offsetM: offsetPx * toM,
    angleRad,
    quality,
  };
}

function resolutionFindings(request: ScanRequest, statedDpi: number | undefined): Finding[] {
  const findings: Finding[] = [];
  if (request.dpi < 250) {
    const values = { dpi: request.dpi, pixelM: 0.0254 / request.dpi };
    findings.push(imageFound('dpi', 'scan/coarse', values));
  }
  if (statedDpi !== undefined && Math.abs(statedDpi / request.dpi - 1) > 0.02) {
    findings.push(imageFound('dpi', 'scan/dpi-differs', { dpi: request.dpi, fileDpi: statedDpi }));
  }
  return findings;
}

function readingFindings(reading: GuideReading, window: Window): Finding[] {
  const at = {
    xPx: Math.round(window.left + window.width / 2),
    yPx: Math.round(window.top + window.height / 2),
  };
  if (reading.kind === 'touching') return [imageFound('image', 'scan/touching', at)];
  // a lid's edge is nothing to speak of
  if (reading.kind === 'too-large' && !window.touchesBorder) {
    return [imageFound('image', 'scan/too-large', { ...at, acrossM: reading.acrossMm / 1e3 })];
  }
  if (reading.kind === 'wrong-size') {
    const { leastLengthMm, mostLengthMm } = guideLimits;
    const range = { leastM: leastLengthMm / 1e3, mostM: mostLengthMm / 1e3 };
    return [imageFound('dpi', 'scan/wrong-size', { ...at, lengthM: reading.lengthMm / 1e3, ...range })];
  }
  return [];
}
