/**
 * Thread laid turn beside turn on a round blank.
 *
 * A turn of a helix of pitch d whose middle line runs at D + d: sqrt((π (D + d))² + d²); N = width / d turns make
 * the wrap. D is the diameter under the thread, d the width one turn takes as laid. Geometry; the turns are round,
 * not flattened. Solid nylon of linear density t tex (g/km): d = sqrt(4 t 10⁻⁶ / (π 1140 kg/m³)) m; wound thread is
 * wider by 1/sqrt(packing), packing 0.6 to 0.8 (textile rule of thumb, from memory).
 */
interface CloseWrap {
  turns: number;
  threadM: number;
}

/** `laidWidthM` and `widthM` positive. */
export function closeWrap(underM: number, widthM: number, laidWidthM: number): CloseWrap {
  const turns = widthM / laidWidthM;
  return { turns, threadM: turns * Math.hypot(Math.PI * (underM + laidWidthM), laidWidthM) };
}
