import type { Place } from './canvas.ts';

/** How far a traced curve lies from the true one. */
export interface TraceJudgement {
  /** Root mean square distance to the true curve, over the traced places. */
  rmsM: number;
  worstM: number;
  /** The worst root mean square within any 300 mm of the blank, after a straight drift is taken out. */
  localRmsM: number;
}

/**
 * Signed distances square to the true curve, judged whole and within windows. Traced places are equally spaced;
 * the first and last 5 mm are left out of the windows, since there the taps, not the picture, end the curve.
 */
export function judgeTrace(
  points: readonly { xM: number; yM: number }[],
  axis: readonly Place[],
  windowM = 0.3,
): TraceJudgement {
  const away = points.map((point) => signedDistance(point, axis));
  const rmsM = Math.sqrt(away.reduce((sum, { offM }) => sum + offM * offM, 0) / away.length);
  const total = away[away.length - 1].alongM;
  const inside = away.filter(({ alongM }) => alongM > 0.005 && alongM < total - 0.005);
  let localRmsM = 0;
  for (let from = 0; from < inside.length; from++) {
    const window = inside.filter(
      ({ alongM }) => alongM >= inside[from].alongM && alongM <= inside[from].alongM + windowM,
    );
    if (window.length >= 5) localRmsM = Math.max(localRmsM, rmsAboutLine(window));
  }
  return { rmsM, worstM: Math.max(...away.map(({ offM }) => Math.abs(offM))), localRmsM };
}

interface Away {
  alongM: number;
  offM: number;
}

/** Distance to the nearest place of the polyline, positive to its left (y up). */
function signedDistance(point: { xM: number; yM: number }, axis: readonly Place[]): Away {
  let best = { alongM: 0, offM: Number.POSITIVE_INFINITY };
  let along = 0;
  for (let i = 0; i + 1 < axis.length; i++) {
    const dx = axis[i + 1].x - axis[i].x;
    const dy = axis[i + 1].y - axis[i].y;
    const length = Math.hypot(dx, dy);
    const px = point.xM - axis[i].x;
    const py = point.yM - axis[i].y;
    const share = Math.min(1, Math.max(0, (px * dx + py * dy) / (length * length)));
    const away = Math.hypot(px - share * dx, py - share * dy);
    if (away < Math.abs(best.offM)) {
      best = { alongM: along + share * length, offM: dx * py - dy * px >= 0 ? away : -away };
    }
    along += length;
  }
  return best;
}

function rmsAboutLine(window: readonly Away[]): number {
  const n = window.length;
  const meanX = window.reduce((sum, one) => sum + one.alongM, 0) / n;
  const meanY = window.reduce((sum, one) => sum + one.offM, 0) / n;
  const xx = window.reduce((sum, one) => sum + (one.alongM - meanX) ** 2, 0);
  const xy = window.reduce((sum, one) => sum + (one.alongM - meanX) * (one.offM - meanY), 0);
  const slope = xx > 0 ? xy / xx : 0;
  return Math.sqrt(
    window.reduce((sum, one) => sum + (one.offM - meanY - slope * (one.alongM - meanX)) ** 2, 0) / n,
  );
}
