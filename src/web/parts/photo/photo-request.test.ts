import { describe, expect, test } from 'vitest';
import type { LoadPhoto, PhotoPlace } from '../../../record/read-load-photo.ts';
import { photoReading } from './photo-request.ts';

const show = (lengthM: number) => `${Math.round(lengthM * 1000)} mm`;
const place = (
  role: PhotoPlace['role'],
  id: string,
  px: [number, number],
  atM?: [number, number],
): PhotoPlace => ({
  id,
  role,
  px,
  atM,
  number: undefined,
  guide: undefined,
  tapped: true,
});
const corners = [
  place('mark', 'a', [1000, 100]),
  place('mark', 'b', [100, 900]),
  place('mark', 'c', [100, 100]),
  place('mark', 'd', [1000, 900]),
];
const ends = [place('butt', 'u', [200, 500]), place('tip', 't', [900, 500])];
const photo = (places: PhotoPlace[], more: Partial<LoadPhoto> = {}): LoadPhoto =>
  ({
    marksBy: 'rectangle',
    rectangle: { widthM: 2, heightM: 1.5, diagonalUpM: undefined, diagonalDownM: undefined },
    distances: [],
    places,
    ...more,
  }) as unknown as LoadPhoto;

describe('a picture with a measured rectangle', () => {
  test('says what is missing, one thing after the other, and then can be read', () => {
    const next = (places: PhotoPlace[], more?: Partial<LoadPhoto>) =>
      photoReading(photo(places, more), show).next;
    const unmeasured = { rectangle: { ...photo([]).rectangle, widthM: undefined } };
    expect(next([])).toMatch(/Tap the four corners/);
    expect(next(corners.slice(0, 3))).toMatch(/One corner to go: with three marks/);
    expect(next(corners, unmeasured)).toMatch(/Enter the width/);
    expect(next(corners)).toMatch(/the butt end/);
    expect(next([...corners, ends[0]])).toMatch(/Tap the tip/);
    expect(next([...corners, ...ends])).toBeUndefined();
  });
  test('gives every corner its place in whatever order they were tapped', () => {
    const { request } = photoReading(photo([...corners, ...ends]), show);
    const at = Object.fromEntries((request?.marks ?? []).map(({ px, atM }) => [px.join(), atM]));
    expect(at).toEqual({ '1000,100': [2, 1.5], '100,900': [0, 0], '100,100': [0, 1.5], '1000,900': [2, 0] });
  });
  test('whose diagonal was mistyped is not read, and the figure is named', () => {
    const rectangle = { widthM: 2, heightM: 1.5, diagonalUpM: 2.5, diagonalDownM: 2.9 };
    const { request, findings } = photoReading(photo([...corners, ...ends], { rectangle }), show);
    expect(request).toBeUndefined();
    expect(findings[0].message).toMatch(
      /diagonal from upper left to lower right, 2900 mm, ought to be 2500 mm/,
    );
  });
  test('tapped on one line is no rectangle', () => {
    const line = [100, 400, 700, 1000].map((x, i) => place('mark', `${i}`, [x, 500]));
    const { request, findings } = photoReading(photo([...line, ...ends]), show);
    expect(request).toBeUndefined();
    expect(findings[0].message).toMatch(/no four-sided figure/);
  });
});

test('a distance that contradicts two places is named with both', () => {
  const marks = [
    place('mark', 'a', [100, 900], [0, 0]),
    place('mark', 'b', [1000, 900], [2, 0]),
    place('mark', 'c', [1000, 100], [2, 1.5]),
    place('mark', 'd', [100, 100], [0, 1.5]),
  ];
  const of = (apartM: number) =>
    photoReading(
      photo([...marks, ...ends], { marksBy: 'places', distances: [{ id: 'x', from: 'a', to: 'c', apartM }] }),
      show,
    );
  expect(of(2.503).findings).toEqual([]);
  expect(of(2.503).request?.marks).toHaveLength(4);
  expect(of(2.4).findings[0].message).toMatch(/mark 1 and mark 3 stand 2500 mm apart, measured were 2400 mm/);
  expect(of(2.4).request).toBeUndefined();
});
