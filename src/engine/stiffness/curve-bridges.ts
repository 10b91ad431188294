/**
 * Where a trace was bridged: its standard error there is far above what marks alone leave along the curve, and a fit must
 * not follow it as closely as the rest.
 */
interface Uncertain {
  sigmaM?: number;
}

/** Marks and lens alone vary less along a curve. Judgement. */
const bridgedTimes = 1.5;

/** Per point, beyond what marks and lens leave; 0 where it was seen. */
export function bridgedOf(points: readonly Uncertain[]): Float64Array {
  const usualM = usualSigmaM(points);
  return Float64Array.from(points, ({ sigmaM = 0 }) =>
    sigmaM > bridgedTimes * usualM ? Math.sqrt(sigmaM ** 2 - usualM ** 2) : 0,
  );
}

/** Points that were seen; all of them where none says how well. */
export function pointsSeen<P extends Uncertain>(points: readonly P[]): P[] {
  const bridged = bridgedOf(points);
  return points.filter((_, i) => bridged[i] === 0);
}

function usualSigmaM(points: readonly Uncertain[]): number {
  return points.map(({ sigmaM = 0 }) => sigmaM).sort((a, b) => a - b)[points.length >> 1];
}
