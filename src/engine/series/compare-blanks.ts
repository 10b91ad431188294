/**
 * Two blanks side by side: their stiffness along the length, and how far apart the readings leave them.
 *
 *   ln ratio(s) = ln EI_new(s) - ln EI_old(s),   σ² = σ_new² + σ_old²
 *
 * compared at equal shares of the length, since the sections of one pattern differ by millimetres. The fits are taken
 * as independent; two blanks that lean on one series are not, and the ± is then too wide, never too narrow.
 */
import type { StiffnessBandRow } from '../stiffness/request.ts';

interface BlankRatio {
  shareOfLength: number;
  /** New over old, with its 95 % band. */
  ratio: number;
  low: number;
  high: number;
}

/** `band` each tip first, from 0 to its own length. */
export function compareBlanks(
  before: readonly StiffnessBandRow[],
  after: readonly StiffnessBandRow[],
  shares: readonly number[],
): BlankRatio[] {
  return shares.map((shareOfLength) => {
    const [a, b] = [logAt(before, shareOfLength), logAt(after, shareOfLength)];
    const log = b.log - a.log;
    const reach = Math.hypot(a.reach, b.reach);
    return { shareOfLength, ratio: Math.exp(log), low: Math.exp(log - reach), high: Math.exp(log + reach) };
  });
}

/** ln EI and half its band there, linear between rows. */
function logAt(rows: readonly StiffnessBandRow[], share: number): { log: number; reach: number } {
  const at = share * rows[rows.length - 1].fromTipM;
  const next = Math.max(
    1,
    rows.findIndex(({ fromTipM }) => fromTipM >= at),
  );
  const [a, b] = [rows[next - 1], rows[next]];
  const t = b.fromTipM > a.fromTipM ? (at - a.fromTipM) / (b.fromTipM - a.fromTipM) : 0;
  const mix = (of: (row: StiffnessBandRow) => number) => of(a) + t * (of(b) - of(a));
  return {
    log: mix(({ EINm2 }) => Math.log(EINm2)),
    reach: mix(({ lowNm2, highNm2 }) => 0.5 * Math.log(highNm2 / lowNm2)),
  };
}
