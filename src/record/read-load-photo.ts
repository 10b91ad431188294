import { type CurvePoint, type CurveRing, curveOf, placesMark, ringsOf } from './load-curve.ts';
import { oneOf, type RowReader } from './read-values.ts';
import { type TraceNote, traceNotesOf } from './trace-notes.ts';

export type PlaceRole = 'mark' | 'butt' | 'tip' | 'via' | 'ring' | 'line';

/** Something tapped or found in a picture. */
export interface PhotoPlace {
  id: string;
  role: PlaceRole;
  px: [number, number];
  /** Marks only: the printed number, and the place in the marks' plane where it is known. */
  number: number | undefined;
  atM: [number, number] | undefined;
  guide: string | undefined;
  /** By the builder's hand; else found by the tool. */
  tapped: boolean;
}

interface PhotoDistance {
  id: string;
  from: string;
  to: string;
  apartM: number | undefined;
}

/** The curve read from a picture. */
export interface PhotoTrace {
  madeAt: string;
  engineVersion: string;
  /** A place or distance has changed since it was made. */
  outOfDate: boolean;
  /** Butt to tip, in the marks' plane: x right, y up. */
  points: CurvePoint[];
  rings: CurveRing[];
  marksRmsM: number;
  cameraAwayM: number | undefined;
  seenShare: number | undefined;
  lensEstimated: boolean;
  findings: TraceNote[];
}

/** A rectangle as measured; its diagonals are the check. */
interface TypedRectangle {
  widthM: number | undefined;
  heightM: number | undefined;
  /** Lower left to upper right. */
  diagonalUpM: number | undefined;
  /** Upper left to lower right. */
  diagonalDownM: number | undefined;
}

export interface LoadPhoto {
  id: string;
  attachment: string | undefined;
  /** SHA-256 of the picture's bytes. */
  hash: string | undefined;
  name: string;
  part: 'whole' | 'close-up';
  widthPx: number | undefined;
  heightPx: number | undefined;
  marksBy: 'rectangle' | 'places' | 'printed';
  rectangle: TypedRectangle;
  /** The blank's plane in front of the marks, towards the camera; negative: behind them. */
  standOffM: number | undefined;
  places: PhotoPlace[];
  distances: PhotoDistance[];
  trace: PhotoTrace | undefined;
  /** What a trace made now would be made from. */
  madeFrom: string;
}

/** Rows that belong to one picture or another. */
export interface PhotoRows {
  places: RowReader[];
  distances: RowReader[];
  traces: RowReader[];
}

export function readPhoto(
  photo: RowReader,
  rows: PhotoRows,
  attachments: readonly RowReader[],
  stand: RowReader | undefined,
): LoadPhoto {
  const own = (row: RowReader) => row.text('photo') === photo.id;
  const attachment = attachments.find(({ id }) => id === photo.text('attachment'));
  const read = {
    id: photo.id,
    attachment: attachment?.id,
    hash: attachment?.text('content'),
    name: attachment?.text('name') ?? '',
    part: oneOf(photo.text('part'), ['whole', 'close-up'] as const) ?? 'whole',
    widthPx: photo.number('widthPx'),
    heightPx: photo.number('heightPx'),
    marksBy: oneOf(photo.text('marksBy'), ['rectangle', 'places', 'printed'] as const) ?? 'rectangle',
    rectangle: {
      widthM: photo.si('rectangleWidth'),
      heightM: photo.si('rectangleHeight'),
      diagonalUpM: photo.si('diagonalUp'),
      diagonalDownM: photo.si('diagonalDown'),
    },
    standOffM: photo.si('standOff') ?? stand?.si('standOff'),
    places: rows.places.filter(own).flatMap(readPlace),
    distances: rows.distances.filter(own).map(readDistance),
  };
  const madeFrom = madeFromOf(read);
  const trace = rows.traces.find(own);
  return { ...read, madeFrom, trace: trace && readTrace(trace, madeFrom) };
}

const roles = ['mark', 'butt', 'tip', 'via', 'ring', 'line'] as const satisfies PlaceRole[];

function readPlace(place: RowReader): PhotoPlace[] {
  const role = oneOf(place.text('role'), roles);
  const [x, y] = [place.number('pxX'), place.number('pxY')];
  if (role === undefined || x === undefined || y === undefined) return [];
  const [atX, atY] = [place.si('atX'), place.si('atY')];
  return [
    {
      id: place.id,
      role,
      px: [x, y],
      number: place.number('number'),
      atM: atX !== undefined && atY !== undefined ? [atX, atY] : undefined,
      guide: place.text('guide'),
      tapped: place.text('found') !== 'found',
    },
  ];
}

function readDistance(distance: RowReader): PhotoDistance {
  const { id } = distance;
  const [from, to] = [distance.text('from') ?? '', distance.text('to') ?? ''];
  return { id, from, to, apartM: distance.si('apart') };
}

function readTrace(trace: RowReader, madeFrom: string): PhotoTrace | undefined {
  const points = curveOf(trace.text('curve'));
  if (points.length < 2) return undefined;
  return {
    madeAt: trace.text('madeAt') ?? '',
    engineVersion: trace.text('engineVersion') ?? '',
    outOfDate: trace.text('madeFrom') !== madeFrom,
    points,
    rings: ringsOf(trace.text('rings')),
    marksRmsM: trace.si('marksRms') ?? 0,
    cameraAwayM: trace.si('cameraAway'),
    seenShare: trace.number('seenShare'),
    lensEstimated: trace.flag('lensEstimated'),
    findings: traceNotesOf(trace.text('findings')),
  };
}

/** Everything the tracing looks at, in one short text. */
function madeFromOf(photo: Omit<LoadPhoto, 'trace' | 'madeFrom'>): string {
  const { hash, marksBy, rectangle, standOffM, places, distances } = photo;
  return placesMark([
    hash ?? '',
    marksBy,
    rectangle.widthM ?? '',
    rectangle.heightM ?? '',
    rectangle.diagonalUpM ?? '',
    rectangle.diagonalDownM ?? '',
    standOffM ?? '',
    ...places.flatMap(({ role, px, number, atM, guide }) =>
      [role, ...px, number ?? '', ...(atM ?? []), guide ?? ''].map(String),
    ),
    ...distances.flatMap(({ from, to, apartM }) => [from, to, String(apartM ?? '')]),
  ]);
}
