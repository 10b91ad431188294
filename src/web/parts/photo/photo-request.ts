import { type MeasuredRectangle, rectanglePlaces } from '../../../engine/load-test/rectangle-places.ts';
import type { TraceRequest } from '../../../image/trace/trace-request.ts';
import type { LoadPhoto, PhotoPlace } from '../../../record/read-load-photo.ts';
import { cornerNames, cornerOrder } from './corner-order.ts';
import { orderAlong } from './order-along.ts';

/** A mark of a picture with its name on the sheet; its place is undefined until it is known. */
export interface NamedMark {
  id: string;
  name: string;
  px: [number, number];
  atM: [number, number] | undefined;
}
export interface PhotoFinding {
  /** `stop`: no curve is read until it is mended. */
  severity: 'stop' | 'doubt';
  message: string;
}
/** What a picture's taps and measures come to. */
export interface PhotoReading {
  marks: NamedMark[];
  butt: PhotoPlace | undefined;
  tip: PhotoPlace | undefined;
  /** Butt to tip. */
  via: PhotoPlace[];
  rings: PhotoPlace[];
  findings: PhotoFinding[];
  /** The next thing to do; undefined once a curve can be read. */
  next: string | undefined;
  /** Undefined while something is missing. */
  request: TraceRequest | undefined;
}

/** Lengths as the shop writes them. */
export type ShowLength = (lengthM: number) => string;

/** What can be read off a picture, what is missing and what does not fit. Never throws. */
export function photoReading(photo: LoadPhoto, show: ShowLength): PhotoReading {
  const of = (role: PhotoPlace['role']) => photo.places.filter((place) => place.role === role);
  const [butt, tip] = [of('butt').at(-1), of('tip').at(-1)];
  const { marks, findings, next: marksNext } = marksOf(photo, of('mark'), show);
  const via = orderAlong(of('via'), butt, tip);
  const next = marksNext ?? endsNext(butt, tip);
  const stopped = next !== undefined || findings.some(({ severity }) => severity === 'stop');
  const request =
    stopped || !butt || !tip
      ? undefined
      : {
          marks: marks.flatMap(({ px, atM }) => (atM ? [{ px, atM }] : [])),
          ends: { butt: butt.px, tip: tip.px },
          via: via.map(({ px }) => px),
        };
  return { marks, butt, tip, via, rings: of('ring'), findings, next, request };
}

/** Of the marks that the curve is measured by, in the order of the request. */
export function placedNames(marks: readonly NamedMark[]): string[] {
  return marks.flatMap(({ atM, name }) => (atM ? [name] : []));
}

function endsNext(butt: PhotoPlace | undefined, tip: PhotoPlace | undefined): string | undefined {
  if (!butt) return 'Tap where the blank leaves the grip or the clamp: the butt end of the curve.';
  return tip ? undefined : 'Tap the tip: the end of the tip-top’s tube, or of the bare blank.';
}

interface MarksReading {
  marks: NamedMark[];
  findings: PhotoFinding[];
  next: string | undefined;
}

function marksOf(photo: LoadPhoto, taps: readonly PhotoPlace[], show: ShowLength): MarksReading {
  return photo.marksBy === 'rectangle' ? rectangleMarks(photo, taps, show) : placedMarks(photo, taps, show);
}

/** Four corners of a measured rectangle; marks with places of their own may stand beside them. */
function rectangleMarks(photo: LoadPhoto, taps: readonly PhotoPlace[], show: ShowLength): MarksReading {
  const corners = taps.filter(({ atM }) => !atM).slice(0, 4);
  const more = taps.filter((tap) => !corners.includes(tap));
  const order = cornerOrder(corners.map(({ px }) => px));
  const { widthM, heightM, diagonalUpM, diagonalDownM } = photo.rectangle;
  const measured = widthM && heightM ? { widthM, heightM, diagonalUpM, diagonalDownM } : undefined;
  const places = measured && rectanglePlaces(measured);
  const named = corners.map(({ id, px }, tap): NamedMark => {
    const corner = order?.indexOf(tap);
    if (corner === undefined) return { id, px, name: `corner ${tap + 1}`, atM: undefined };
    return { id, px, name: cornerNames[corner], atM: places?.cornersM[corner] };
  });
  const extra = more.map(({ id, px, atM }, i) => ({ id, px, atM, name: `mark ${i + 5}` }));
  const findings = measured && places ? rectangleFindings(measured, places, show) : [];
  if (corners.length === 4 && !order)
    findings.push({
      severity: 'stop',
      message:
        'The four taps are no four-sided figure: three lie on a line, or one within the others. Tap the corners of the rectangle.',
    });
  return { marks: [...named, ...extra], findings, next: rectangleNext(corners.length, widthM, heightM) };
}

function rectangleNext(taps: number, widthM: number | undefined, heightM: number | undefined) {
  if (taps < 4) {
    const of = [
      'Tap the four corners of a rectangle you measured',
      'Three corners to go',
      'Two corners to go',
    ];
    return `${of[taps] ?? 'One corner to go: with three marks the picture’s slant cannot be told'}.`;
  }
  if (!widthM) return 'Enter the width of the rectangle between its tapped corners.';
  return heightM ? undefined : 'Enter the height of the rectangle between its tapped corners.';
}

const fieldNames: Record<keyof MeasuredRectangle, string> = {
  widthM: 'width',
  heightM: 'height',
  diagonalUpM: 'diagonal from lower left to upper right',
  diagonalDownM: 'diagonal from upper left to lower right',
};

function rectangleFindings(
  measured: MeasuredRectangle,
  places: ReturnType<typeof rectanglePlaces>,
  show: ShowLength,
): PhotoFinding[] {
  const { verdict, suspects, offSquareRad } = places;
  if (verdict === 'out-of-square') {
    const degrees = Math.abs((offSquareRad * 180) / Math.PI).toFixed(1);
    return [
      {
        severity: 'doubt',
        message: `The rectangle is ${degrees}° out of square by its diagonals; corrected for.`,
      },
    ];
  }
  if (verdict !== 'slip') return [];
  const words = suspects.map(
    ({ field, oughtM }) =>
      `the ${fieldNames[field]}, ${show(measured[field] ?? 0)}, ought to be ${show(oughtM)}`,
  );
  return [
    {
      severity: 'stop',
      message: `The measures of the rectangle do not fit one another: ${words.join(', or ')}. Measure again.`,
    },
  ];
}

/** Marks with a place each, checked by the distances that were measured between them. */
function placedMarks(photo: LoadPhoto, taps: readonly PhotoPlace[], show: ShowLength): MarksReading {
  const marks = taps.map(({ id, px, atM, number }, i) => ({ id, px, atM, name: `mark ${number ?? i + 1}` }));
  const placed = marks.filter(({ atM }) => atM !== undefined).length;
  const findings = distanceFindings(photo, marks, show);
  if (taps.length < 4) {
    const missing =
      taps.length === 0
        ? 'Tap at least four marks'
        : `${taps.length} of at least four marks are tapped: tap more`;
    return { marks, findings, next: `${missing}; with six the lens is estimated too.` };
  }
  const without = marks.find(({ atM }) => !atM);
  const next = placed < 4 ? `Enter how far ${without?.name} stands right of and above the first.` : undefined;
  return { marks, findings, next };
}

function distanceFindings(photo: LoadPhoto, marks: readonly NamedMark[], show: ShowLength): PhotoFinding[] {
  return photo.distances.flatMap(({ from, to, apartM }): PhotoFinding[] => {
    const [a, b] = [from, to].map((id) => marks.find((mark) => mark.id === id));
    if (!a?.atM || !b?.atM || apartM === undefined) return [];
    const impliedM = Math.hypot(a.atM[0] - b.atM[0], a.atM[1] - b.atM[1]);
    if (Math.abs(impliedM - apartM) <= 0.004 + 0.002 * impliedM) return [];
    const message = `By their places ${a.name} and ${b.name} stand ${show(impliedM)} apart, measured were ${show(apartM)}: one of the two places or this distance is mistyped.`;
    return [{ severity: 'stop', message }];
  });
}
