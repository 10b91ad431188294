import { drawingFrame, extentOf } from '../../parts/drawing/drawing-frame.ts';
import type { SeenCurve } from '../../parts/photo/seen-curve.ts';
import { useWidth } from '../../read/use-width.ts';
import type { Beside } from './beside.ts';

interface Place {
  outM: number;
  upM: number;
}
interface BesideDrawingProps {
  seen: SeenCurve;
  beside: Beside;
  before: SeenCurve | undefined;
}

/** The curve seen, the bend predicted and the curve of the test before, true to scale; the table says it in figures. */
export function BesideDrawing({ seen, beside, before }: BesideDrawingProps) {
  const { ref, widthPx } = useWidth();
  const curves: { name: string; places: readonly Place[] }[] = [
    ...(before ? [{ name: 'beside-before', places: before.curve.places }] : []),
    { name: 'beside-predicted', places: beside.predicted },
    { name: 'beside-seen', places: seen.curve.places },
  ];
  const points = curves.flatMap(({ places }) => places.map(({ outM, upM }) => ({ xM: outM, yM: upM })));
  const room = { widthPx: Math.max(widthPx, 200), mostHeightPx: 420, marginPx: 16 };
  const frame = drawingFrame(extentOf([], points, 0.03), room);
  const path = (places: readonly Place[]) =>
    places
      .map(({ outM, upM }, i) => `${i ? 'L' : 'M'}${frame.xPx(outM).toFixed(1)} ${frame.yPx(upM).toFixed(1)}`)
      .join('');
  return (
    <figure ref={ref} className="drawing beside-drawing">
      <svg
        width={frame.widthPx}
        height={frame.heightPx}
        role="img"
        aria-label="Curve seen and bend predicted, true to scale; in figures below"
      >
        {curves.map(({ name, places }) => (
          <path key={name} className={name} d={path(places)} />
        ))}
        {beside.flags.map(({ fromTipM, seen: { outM, upM } }) => (
          <circle key={fromTipM} r="4" cx={frame.xPx(outM)} cy={frame.yPx(upM)} />
        ))}
      </svg>
      <figcaption className="small quiet">
        Full line: seen. Dashed: predicted.{before ? ' Pale: the test before.' : ''} Rings: the places in the
        table.
      </figcaption>
    </figure>
  );
}
