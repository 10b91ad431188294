/** Whether a scan's resolution can be believed, from one thing on it whose length is known. */
interface KnownLength {
  /** As measured with callipers, or printed on the scale. */
  trueM: number;
  /** As read on the scan at `dpi`. */
  readM: number;
}
type ResolutionWord =
  | { ok: true; because: 'file' | 'known' | 'sheet' }
  | { ok: false; because: 'unknown' }
  | { ok: false; because: 'wrong'; dpi: number };

/** A guide by callipers and on the scan agree to about a fiftieth. */
const agreesWithin = 0.02;

/** The known length decides; without one the reference sheet's marks, or the file's own word, if it gives one and it is the resolution used. */
export function resolutionWord(
  dpi: number,
  statedDpi: number | undefined,
  known: KnownLength | undefined,
  onSheet = false,
): ResolutionWord {
  if (known) {
    const truly = (dpi * known.readM) / known.trueM;
    if (Math.abs(truly / dpi - 1) <= agreesWithin) return { ok: true, because: 'known' };
    return { ok: false, because: 'wrong', dpi: nearestUsual(truly) };
  }
  if (onSheet) return { ok: true, because: 'sheet' };
  const stated = statedDpi !== undefined && Math.abs(statedDpi / dpi - 1) <= agreesWithin;
  return stated ? { ok: true, because: 'file' } : { ok: false, because: 'unknown' };
}

/** Scanners have round resolutions; anything further than 3 % from one is taken as it comes out. */
function nearestUsual(dpi: number): number {
  const usual = [100, 150, 200, 240, 300, 400, 600, 800, 1200, 2400];
  return usual.find((one) => Math.abs(one / dpi - 1) < 0.03) ?? Math.round(dpi);
}
