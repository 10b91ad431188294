import type { DrawingFrame } from './drawing-frame.ts';
import { along, beyondPx, type Fan, type FanSize } from './line-fans.ts';
import { type LabelledMark, type PlacedLabel, placeLabels } from './place-labels.ts';

/** The figures of the fans, none on another or on a fan; per fan none where it has no text, or there was no room for it. */
export function placeFanNames(
  fans: readonly (Fan | undefined)[],
  texts: readonly string[],
  { widthPx, heightPx }: Pick<DrawingFrame, 'widthPx' | 'heightPx'>,
  { lengthPx }: Pick<FanSize, 'lengthPx'>,
): PlacedLabel[] {
  const named = fans.flatMap((fan, i) => (fan && texts[i] !== '' ? [{ fan, i }] : []));
  const marks = named.map(({ fan, i }) => nameOf(fan, texts[i]));
  const lines = fans.flatMap((fan) => (fan ? alongFan(fan, lengthPx) : []));
  const placed = placeLabels(marks, { widthPx, heightPx, lines });
  const places: PlacedLabel[] = fans.map(() => undefined);
  named.forEach(({ i }, k) => {
    places[i] = placed[k];
  });
  return places;
}

/** Places along its middle, from its foot to its end. */
function alongFan({ label, outwardsRad }: Fan, lengthPx: number) {
  return [0, 1, 2, 3, 4].map((quarter) => {
    const { x, y } = along(label, outwardsRad, -beyondPx - (quarter / 4) * lengthPx);
    return { xPx: x, yPx: y };
  });
}

/** A turn beyond its limit is written larger, and never left out. */
function nameOf({ label, outwardsRad, isOver }: Fan, text: string): LabelledMark {
  const [outX, outY] = [Math.cos(outwardsRad), Math.sin(outwardsRad)];
  return {
    xPx: label.x - beyondPx * outX,
    yPx: label.y - beyondPx * outY,
    outX,
    outY,
    widthPx: (isOver ? 10.5 : 8) * text.length,
    heightPx: isOver ? 18 : 14,
    first: isOver,
  };
}
