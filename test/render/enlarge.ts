import type { Photo } from './photo.ts';

/** The same photograph with each pixel as a block of `factor` × `factor`, as a sensor of more and finer pixels without sharper lens. */
export function enlarged(photo: Photo, factor: number): Photo {
  const { width, height, rgb } = photo.picture;
  const wide = 3 * width * factor;
  const out = new Uint8Array(wide * height * factor);
  for (let y = 0; y < height; y++) {
    const row = out.subarray(wide * y * factor, wide * (y * factor + 1));
    for (let i = 0; i < width * factor; i++) {
      const from = 3 * (y * width + Math.floor(i / factor));
      row[3 * i] = rgb[from];
      row[3 * i + 1] = rgb[from + 1];
      row[3 * i + 2] = rgb[from + 2];
    }
    for (let k = 1; k < factor; k++) out.set(row, wide * (y * factor + k));
  }
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    (x + 0.5) * factor - 0.5,
    (y + 0.5) * factor - 0.5,
  ];
  return {
    ...photo,
    picture: { width: width * factor, height: height * factor, rgb: out },
    marks: photo.marks.map(({ px, atM }) => ({ px: at(px), atM })),
    ends: { butt: at(photo.ends.butt), tip: at(photo.ends.tip) },
  };
}
