import type { ImageKinds, MarkName } from '../../image/image-kinds.ts';
import type { Writer } from '../writer.ts';
import type { Sentences } from './sentences.ts';

/** The door gives pixels; on the page the drawing shows the place. */
function near(xPx: number, yPx: number, { units }: Writer): string {
  return units === 'si' ? `near pixel (${Math.round(xPx)}, ${Math.round(yPx)})` : 'at the place marked ✕';
}
const pixel = (xPx: number, yPx: number) => `(${Math.round(xPx)}, ${Math.round(yPx)})`;
const markName = (mark: MarkName) => (typeof mark === 'number' ? `mark ${mark}` : mark);
const pointBetween = ({ units }: Writer) =>
  units === 'si' ? 'Add a point on it (via)' : 'Tap a point on the blank (“Point between”)';

export const imageSentences: Sentences<ImageKinds> = {
  'picture/unopened': ({ file, why }) => `Give the path of a JPEG or PNG. ${file} ${why}.`,
  'picture/empty': () => 'The file is empty. Choose another.',
  'picture/unknown-format': ({ bytes }) =>
    `Give a JPEG or PNG. The file (${bytes} bytes) is no picture known here.`,
  'picture/other-format': ({ format }) =>
    `Save the picture as JPEG or PNG; ${format} cannot be read here.${format === 'HEIC' ? ' Or set the phone’s camera to its most compatible format.' : ''}`,
  'picture/broken': ({ format, reason }) =>
    `Copy the picture again, or take another. The ${format} file is broken or cut short (${reason}).`,
  'picture/large-file': ({ megabytes, most }) =>
    `Reduce the picture. The file has ${megabytes} MB; ${most} MB is the most.`,
  'picture/small': ({ widthPx, heightPx, leastPx }) =>
    `Take a larger picture. It is ${widthPx} × ${heightPx} px; each side needs ${leastPx} px.`,
  'picture/many-pixels': ({ widthPx, heightPx, megapixels, most }) =>
    `Set the camera to a smaller picture, or reduce it. It is ${widthPx} × ${heightPx} px, ${megapixels} megapixels; ${most} is the most.`,

  'camera/mark-not-finite': () => 'Give px and atM as two finite numbers each.',
  'camera/mark-outside': ({ xPx, yPx, widthPx, heightPx }) =>
    `Tap the mark again. ${pixel(xPx, yPx)} is outside the picture of ${widthPx} × ${heightPx} px.`,
  'camera/few-marks': ({ count }) =>
    `Give at least four marks of known place. ${count} ${count === 1 ? 'is' : 'are'} too few.`,
  'camera/marks-on-line': () => 'Put two marks well to the side of the others. Now all lie on one line.',
  'camera/marks-nearly-on-line': () =>
    'Add a mark well off the line. All marks but one lie on one line, so the scale across it is weak.',
  'camera/same-place': ({ mark, otherMark }) =>
    `Correct ${markName(mark)} or ${markName(otherMark)}. Both have the same place.`,
  'camera/same-pixel': ({ mark, otherMark }) =>
    `Tap ${markName(mark)} or ${markName(otherMark)} again. You tapped both at the same pixel.`,
  'camera/marks-disagree': ({ missM }, w) =>
    `Check every distance. Do all marks lie in the blank’s plane? They miss their places by ${w.fine(missM)} on average.`,
  'camera/marks-loose': ({ missM, times }, w) =>
    `Check every distance, or add marks. They agree only to ${w.fine(missM)}, ${times.toFixed(1)} times what good taps leave. A mistyped distance may hide in that; places are then off by several times as much.`,
  'camera/mark-odd': ({ mark, givenXM, givenYM, oughtXM, oughtYM, offM, axis }, w) =>
    `Check the distance of ${markName(mark)}, or tap it again. You gave (${w.length(givenXM)}, ${w.length(givenYM)}); the other marks put it at (${w.length(oughtXM)}, ${w.length(oughtYM)}). That is ${w.fine(offM)} away${axis}. It is left out.`,

  'trace/tap-not-finite': () => 'Give two finite numbers, [x, y] in pixels.',
  'trace/tap-outside': ({ xPx, yPx, widthPx, heightPx }) =>
    `Tap inside the picture, or take one with the whole blank in it. ${pixel(xPx, yPx)} is outside its ${widthPx} × ${heightPx} px.`,
  'trace/taps-close': ({ apartPx, from }, w) =>
    `Tap further away. This is ${Math.round(apartPx)} px from ${tapName(from, w)}; two taps need 40 px between them.`,
  'trace/lost': ({ xPx, yPx }, w) => `${pointBetween(w)}, past where it was lost: ${near(xPx, yPx, w)}.`,
  'trace/nothing-at-tap': ({ xPx, yPx }, w) =>
    `Tap again on the blank. Nothing long and thin is seen where you tapped${w.units === 'si' ? `, ${near(xPx, yPx, w)}` : ''}. Or take the picture before a plainer wall.`,
  'trace/edges-seldom': ({ share }, w) =>
    `Check the drawn curve. Both edges of the blank were seen along only ${w.percent(share)} of the way. ${pointBetween(w)}, or photograph it against a plainer wall.`,
  'trace/stretch-unseen': ({ fromPercent, toPercent, xPx, yPx }, w) =>
    `Check the curve ${near(xPx, yPx, w)}, ${fromPercent} % to ${toPercent} % of the way from the butt. The blank hardly stands out there, and the curve is bridged.`,
  'trace/ends-swapped': () => 'Did you swap butt and tip? The tip end is thicker than the butt end.',
  'trace/leaves-picture': () =>
    'Take the picture again from further back, with butt and tip in it. The blank leaves the picture.',
  'trace/end-at-edge': ({ end }) =>
    `You tapped the ${end} at the edge of the picture. If the blank goes on, take it again from further back.`,
  'trace/tip-blurred': ({ widerM }, w) =>
    `Wait until the tip is still, then take the picture again. The tip looks ${w.fine(widerM)} too wide: it swung, or the curve ends on something else.`,
  'trace/marks-vague': ({ plusMinusM }, w) =>
    `Add marks, best all round the blank. These fix its place only to ±${w.fine(plusMinusM)} at the worst.`,
  'trace/two-rods': ({ xPx, yPx }, w) =>
    `Do not use this curve: it goes over from one rod to another, ${near(xPx, yPx, w)}. Tap butt and tip of the rod you mean and a point between. Or take the other rod away and photograph again.`,
  'trace/other-rod': (at, w) => {
    const other = `${pixel(at.thickXPx, at.thickYPx)} to ${pixel(at.thinXPx, at.thinYPx)}`;
    const traced = `butt ${pixel(at.buttXPx, at.buttYPx)}, tip ${pixel(at.tipXPx, at.tipYPx)}`;
    const where = w.units === 'si' ? ` at pixels ${other}. Traced is the one with ${traced}` : '';
    return `Check that the curve stays on its rod. Another bent rod is in the picture${where}. If you mean that one, tap its butt and tip and a point between.`;
  },

  'ends/length': ({ lengthM, leastM, mostM }, w) =>
    `Give the blank’s length from the clamp to the tip. ${w.length(lengthM)} is not from ${w.length(leastM)} to ${w.length(mostM)}.`,
  'ends/clamp-outside': () =>
    'Turn the camera until the clamp is in the picture, or tap butt and tip. The clamp’s place is outside it.',
  'ends/no-line': () =>
    'Tap butt and tip. No clear line as long as the blank leaves the clamp in this picture.',
  'ends/two-lines': () =>
    'Check butt and tip, or tap them. Two lines of the blank’s length leave the clamp in this picture.',
  'ends/end-unclear': ({ end }) =>
    `Check butt and tip, or tap them. The blank’s ${end} hardly stands out in this picture.`,

  'scan/resolution': ({ dpi }) => `Scan at 600 dpi and give that number. ${dpi} is not from 100 to 2400.`,
  'scan/coarse': ({ dpi, pixelM }, w) => `Scan at 600 dpi. At ${dpi} dpi a pixel is ${w.calliper(pixelM)}.`,
  'scan/dpi-differs': ({ dpi, fileDpi }) =>
    `Check which resolution is right, with a printed scale or a guide you know. You gave ${dpi} dpi; the file says ${fileDpi}.`,
  'scan/none-found': () =>
    'No two-footed guide was found. Lay them apart on the glass, feet down, and scan at 600 dpi.',
  'scan/touching': ({ xPx, yPx }) =>
    `Lay the guides apart and scan again. Two or more touch or overlap near pixel ${pixel(xPx, yPx)}.`,
  'scan/too-large': ({ xPx, yPx, acrossM }, w) =>
    `Take what lies at pixel ${pixel(xPx, yPx)} off the glass, or check the resolution. It is ${w.length(acrossM)} across, more than any guide.`,
  'scan/wrong-size': ({ xPx, yPx, lengthM, leastM, mostM }, w) =>
    `Check the resolution. A guide near pixel ${pixel(xPx, yPx)} would be ${w.length(lengthM)} long; guides are ${w.length(leastM)} to ${w.length(mostM)}.`,
  'scan/marks-unseen': ({ marks }) =>
    `${marks.length === 1 ? `Mark ${marks[0]} is` : `Marks ${marks.join(', ')} are`} not seen. Take the picture from straight above, sharp and without glare. All four marks of the reference sheet must be in it.`,
  'scan/unreadable': ({ reason }) =>
    `Save the scan smaller, or at 600 dpi, and try again. This device could not read it (${reason}).`,
  'scan/sheet-small': ({ dpi }) =>
    `Go nearer, until the four marks fill the picture. It shows the sheet at only ${dpi} dpi.`,
};

function tapName(path: string, { units }: Writer): string {
  if (units === 'si') return path;
  const via = /^via\[(\d+)\]$/.exec(path);
  return via ? `point between ${Number(via[1]) + 1}` : `the ${path.replace('ends.', '')}`;
}
