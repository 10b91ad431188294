/** What is wrong with a frame before it is sent, from a small copy of it in grey. */
export interface SmallFrame {
  width: number;
  height: number;
  /** Row by row, 0 to 255. */
  grey: Uint8ClampedArray | Uint8Array;
}

/** Darker than this nothing is seen; a dark wall's own grain is brighter. Judgement. */
const blackBelow = 12;
const mostBlackShare = 0.35;
/** Levels two by two pixels differ by from one look to the next, where something moved: grain makes two or three. */
const movedLevels = 12;
/** So many of them are no grain. */
const leastMoved = 8;

/** Undefined where the frame can be sent. */
export function frameTrouble({ grey }: SmallFrame): string | undefined {
  let black = 0;
  for (const level of grey) if (level < blackBelow) black++;
  if (black > 0.98 * grey.length) return 'The camera sees nothing: uncover the lens or put the light on.';
  if (black > mostBlackShare * grey.length)
    return 'A large part of the picture is black. Uncover the lens, or wait until the camera has settled.';
  return undefined;
}

/** Whether something moved between two looks: the weight still swings, or the telephone does. */
export function hasMoved(before: SmallFrame, after: SmallFrame): boolean {
  if (before.width !== after.width || before.height !== after.height) return true;
  const [was, is] = [blockMeans(before), blockMeans(after)];
  return was.filter((level, i) => Math.abs(level - is[i]) > movedLevels).length >= leastMoved;
}

function blockMeans({ width, height, grey }: SmallFrame): number[] {
  const [across, down] = [width >> 1, height >> 1];
  return Array.from({ length: across * down }, (_, i) => {
    const at = 2 * Math.floor(i / across) * width + 2 * (i % across);
    return (grey[at] + grey[at + 1] + grey[at + width] + grey[at + width + 1]) / 4;
  });
}
