/** Where a sheet's texts stand, for tests that no text lies on another. */
import type { Text } from '../../src/sheets/drawing.ts';
import { textWidthMm } from '../../src/sheets/text-width.ts';

export interface Box {
  leftMm: number;
  topMm: number;
  rightMm: number;
  bottomMm: number;
}

/** The box of a text that reads from left to right, or upwards. */
export function textBox(label: Text): Box {
  const width = textWidthMm(label.pieces, label.sizeMm, label.bold);
  const before = { start: 0, middle: width / 2, end: width }[label.align];
  const [up, down] = [0.75 * label.sizeMm, 0.22 * label.sizeMm];
  if (label.upwards) {
    const bottomMm = label.yMm + before;
    return { leftMm: label.xMm - up, rightMm: label.xMm + down, topMm: bottomMm - width, bottomMm };
  }
  const leftMm = label.xMm - before;
  return { leftMm, rightMm: leftMm + width, topMm: label.yMm - up, bottomMm: label.yMm + down };
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.leftMm < b.rightMm && b.leftMm < a.rightMm && a.topMm < b.bottomMm && b.topMm < a.bottomMm;
}
