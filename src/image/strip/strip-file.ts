import type { Orientation } from '../decode/orientation.ts';

/** What a stripper of one format answers; it throws on broken bytes. */
export interface StrippedFile {
  parts: Uint8Array[];
  /** As stored. */
  widthPx: number;
  heightPx: number;
  orientation: Orientation;
}

/** Whether Latin-1 characters stand at a place. */
export function startsWith(bytes: Uint8Array, at: number, text: string): boolean {
  return [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));
}

/** A TIFF block (Exif 2.3, CIPA DC-008) that says the orientation and nothing else. */
export function orientationBlock(orientation: Orientation): Uint8Array {
  return Uint8Array.from([
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1],
    ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  ]);
}
