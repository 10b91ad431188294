import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import type { PhotoReading, ShowLength } from './photo-request.ts';

export interface StandOffFieldProps {
  photo: LoadPhoto;
  reading: PhotoReading;
  show: ShowLength;
}

/** How far the blank stands before its marks, and what would be wrong if that were left out. */
export function StandOffField({ photo, reading, show }: StandOffFieldProps) {
  return (
    <div className="photo-stand-off">
      <Field
        path={['loadPhotos', photo.id, 'standOff']}
        hint={<Figure text={errorWords(photo, reading, show)} />}
      />
    </div>
  );
}

/** Before a curve is read the camera counts as 1.3 times the marks' extent away, usual of a telephone (judgement). */
function errorWords({ standOffM, trace }: LoadPhoto, { marks }: PhotoReading, show: ShowLength): string {
  const advice =
    'Best is marks in the plane in which the rod bends: hold a plumb line, or a straight-edge along the butt, against them.';
  const placed = marks.flatMap(({ atM }) => (atM ? [atM] : []));
  const seen = [...placed, ...(trace?.points ?? []).map(({ xM, yM }) => [xM, yM] as const)];
  if (seen.length < 2) return advice;
  const spanM = Math.max(extent(seen.map(([x]) => x)), extent(seen.map(([, y]) => y)));
  const awayM = trace?.cameraAwayM ?? 1.3 * spanM;
  if (standOffM !== undefined && standOffM !== 0) {
    const share = Math.abs(standOffM) / awayM;
    return `Reckoned with. Left out, lengths would be ${(100 * share).toFixed(1)} % off, ${show((share * spanM) / 2)} at the ends of the picture; a tenth to a quarter of that may remain, the camera’s distance being known no better.`;
  }
  const example = 0.03 / awayM;
  return `${advice} A wall ${show(0.03)} behind the blank would put lengths ${(100 * example).toFixed(1)} % off, ${show((example * spanM) / 2)} at the ends.`;
}

function extent(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
