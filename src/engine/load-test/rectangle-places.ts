/**
 * Corners of a measured rectangle, and whether its four measures fit one another.
 *
 * Parallelogram law: d₁² + d₂² = 2(w² + h²), whatever the corner's angle; and d₁² − d₂² = 4·w·h·cos θ gives that
 * angle. So two diagonals tell a frame out of square (which is corrected) from a slip in a figure (which is
 * named). Source: elementary geometry. A tape's reading counts as good to 4 mm plus 0.2 %: judgement.
 */
export interface MeasuredRectangle {
  widthM: number;
  heightM: number;
  /** Lower left to upper right. */
  diagonalUpM?: number;
  /** Upper left to lower right. */
  diagonalDownM?: number;
}
interface RectanglePlaces {
  /** Lower left (the origin), lower right, upper right, upper left; x right, y up, in metres. */
  cornersM: [number, number][];
  /** 'not-checked' without a diagonal; 'out-of-square' is corrected for; 'slip' means that a figure is wrong. */
  verdict: 'fits' | 'not-checked' | 'out-of-square' | 'slip';
  /** Off the right angle at the lower left corner; 0 unless out of square. */
  offSquareRad: number;
  /** With a slip: the figure that alone would explain it first, and what it ought to be. */
  suspects: { field: keyof MeasuredRectangle; oughtM: number }[];
}

const tapeGood = { fixedM: 0.004, share: 0.002 };

export function rectanglePlaces(measured: MeasuredRectangle): RectanglePlaces {
  const { widthM: w, heightM: h, diagonalUpM: up, diagonalDownM: down } = measured;
  const square = Math.hypot(w, h);
  const offOf = (diagonalM: number) => Math.abs(diagonalM - square);
  const good = tapeGood.fixedM + tapeGood.share * square;
  const given = [up, down].filter((diagonal) => diagonal !== undefined);
  const plain = placesOf(w, h, 0);
  if (given.length === 0) return { ...plain, verdict: 'not-checked', suspects: [] };
  if (given.every((diagonal) => offOf(diagonal) <= good)) return { ...plain, verdict: 'fits', suspects: [] };
  if (up === undefined || down === undefined)
    return { ...plain, verdict: 'slip', suspects: withOneDiagonal(w, h, up, down) };
  const mean = Math.sqrt((up * up + down * down) / 2);
  const cosine = (up * up - down * down) / (4 * w * h);
  if (offOf(mean) <= good && Math.abs(cosine) < 0.1)
    return { ...placesOf(w, h, cosine), verdict: 'out-of-square', suspects: [] };
  return { ...plain, verdict: 'slip', suspects: withBoth({ w, h, up, down, square, good }) };
}

function placesOf(w: number, h: number, cosine: number): Pick<RectanglePlaces, 'cornersM' | 'offSquareRad'> {
  const [x, y] = [h * cosine, h * Math.sqrt(1 - cosine * cosine)];
  return {
    cornersM: [
      [0, 0],
      [w, 0],
      [w + x, y],
      [x, y],
    ],
    offSquareRad: Math.asin(cosine),
  };
}

/** Any one of three may be wrong; what each ought to be if the other two are right. */
function withOneDiagonal(w: number, h: number, up: number | undefined, down: number | undefined) {
  const diagonal = up ?? down ?? 0;
  const side = (other: number) =>
    diagonal > other ? Math.sqrt(diagonal * diagonal - other * other) : undefined;
  return suspectsOf([
    ['widthM', side(h)],
    ['heightM', side(w)],
    [up === undefined ? 'diagonalDownM' : 'diagonalUpM', Math.hypot(w, h)],
  ]);
}

/** One diagonal fits the sides: the other is the slip. Both equal: a side is. Else the mean asks for a side. */
function withBoth({
  w,
  h,
  up,
  down,
  square,
  good,
}: Record<'w' | 'h' | 'up' | 'down' | 'square' | 'good', number>) {
  if (Math.abs(up - square) <= good) return suspectsOf([['diagonalDownM', square]]);
  if (Math.abs(down - square) <= good) return suspectsOf([['diagonalUpM', square]]);
  const meanSquare = (up * up + down * down) / 2;
  const side = (other: number) =>
    meanSquare > other * other ? Math.sqrt(meanSquare - other * other) : undefined;
  return suspectsOf([
    ['widthM', side(h)],
    ['heightM', side(w)],
  ]);
}

function suspectsOf(list: [keyof MeasuredRectangle, number | undefined][]): RectanglePlaces['suspects'] {
  return list.flatMap(([field, oughtM]) => (oughtM === undefined ? [] : [{ field, oughtM }]));
}
