/**
 * From a picture's pixels to the screen: scale and shift, nothing else. Pixels of the picture from its top left
 * pixel's centre, x right, y down; screen places in CSS px from the stage's top left corner.
 */
export interface PhotoView {
  /** CSS px a picture's pixel takes. */
  scale: number;
  /** Where the picture's top left corner stands on the stage. */
  leftPx: number;
  topPx: number;
}
export interface Size {
  widthPx: number;
  heightPx: number;
}
export interface ScreenPoint {
  x: number;
  y: number;
}

/** One picture pixel takes at most this many CSS px. */
const largestScale = 12;

/** The whole picture in the middle of the stage. */
export function wholeView(picture: Size, stage: Size): PhotoView {
  const scale = Math.min(stage.widthPx / picture.widthPx, stage.heightPx / picture.heightPx);
  return {
    scale,
    leftPx: (stage.widthPx - scale * picture.widthPx) / 2,
    topPx: (stage.heightPx - scale * picture.heightPx) / 2,
  };
}

/** Zoomed about a place of the stage, which stays where it is; never smaller than the whole picture. */
export function zoomed(
  view: PhotoView,
  by: number,
  about: ScreenPoint,
  picture: Size,
  stage: Size,
): PhotoView {
  const least = wholeView(picture, stage).scale;
  const scale = Math.min(Math.max(view.scale * by, least), Math.max(least, largestScale));
  const share = scale / view.scale;
  return kept(
    {
      scale,
      leftPx: about.x - (about.x - view.leftPx) * share,
      topPx: about.y - (about.y - view.topPx) * share,
    },
    picture,
    stage,
  );
}

export function panned(view: PhotoView, x: number, y: number, picture: Size, stage: Size): PhotoView {
  return kept({ ...view, leftPx: view.leftPx + x, topPx: view.topPx + y }, picture, stage);
}

/** So that a picture's place stands in the middle, at no less than one CSS px for a picture's pixel. */
export function lookingAt(
  at: readonly [number, number],
  view: PhotoView,
  picture: Size,
  stage: Size,
): PhotoView {
  const scale = Math.max(1, view.scale);
  const leftPx = stage.widthPx / 2 - scale * (at[0] + 0.5);
  const topPx = stage.heightPx / 2 - scale * (at[1] + 0.5);
  return kept({ scale, leftPx, topPx }, picture, stage);
}

export function toScreen(view: PhotoView, [x, y]: readonly [number, number]): ScreenPoint {
  return { x: view.leftPx + view.scale * (x + 0.5), y: view.topPx + view.scale * (y + 0.5) };
}

export function toPixel(view: PhotoView, { x, y }: ScreenPoint): [number, number] {
  return [(x - view.leftPx) / view.scale - 0.5, (y - view.topPx) / view.scale - 0.5];
}

/** A place moved back into the picture. */
export function inside([x, y]: readonly [number, number], { widthPx, heightPx }: Size): [number, number] {
  return [Math.min(Math.max(x, 0), widthPx - 1), Math.min(Math.max(y, 0), heightPx - 1)];
}

/** The picture cannot be lost off the stage: along each side it fills it, or stands in its middle. */
function kept(view: PhotoView, picture: Size, stage: Size): PhotoView {
  return {
    scale: view.scale,
    leftPx: keptAlong(view.leftPx, view.scale * picture.widthPx, stage.widthPx),
    topPx: keptAlong(view.topPx, view.scale * picture.heightPx, stage.heightPx),
  };
}

function keptAlong(start: number, length: number, room: number): number {
  if (length <= room) return (room - length) / 2;
  return Math.min(0, Math.max(room - length, start));
}
