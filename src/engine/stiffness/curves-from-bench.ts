/** Traced curves of the bench as the fit takes them. */
import type { CurveSetup } from '../bench/bench.ts';
import type { Finding } from '../finding.ts';
import { arcFromTip } from './curve-places.ts';
import type { FitRows } from './fit-rows.ts';
import type { FitCurve, FitCurveSetup, FitRequest } from './request.ts';

interface CurveOfBench {
  setup: FitCurveSetup;
  rows: FitRows;
}

export function curveFits(curves: readonly CurveSetup[], lengthM: number): CurveOfBench[] {
  return curves.map((curve) => {
    const alike =
      curve.shared === undefined ? [curve] : curves.filter(({ shared }) => shared === curve.shared);
    return curveFit(curve, heldFromTip(alike, lengthM));
  });
}

/** Where nobody said where the hold is, the curves' own length says it, to the scale of the picture. */
function heldFromTip(alike: readonly CurveSetup[], lengthM: number): Hold {
  const stated = alike.find(({ clampFromTipM }) => clampFromTipM !== undefined)?.clampFromTipM;
  if (stated !== undefined) return { clampFromTipM: stated };
  const arcs = alike.map(({ points }) => arcFromTip(points)[0]).sort((a, b) => a - b);
  const ownM = Math.min(lengthM, arcs[(arcs.length - 1) >> 1]);
  return { clampFromTipM: ownM, clampSigmaM: 0.01 * ownM };
}

type Hold = Pick<FitCurveSetup, 'clampFromTipM' | 'clampSigmaM'>;

function curveFit(curve: CurveSetup, hold: Hold): CurveOfBench {
  const { hungKg, nominalAngleRad, shared } = curve;
  return {
    setup: {
      kind: 'curve',
      ...hold,
      ...(nominalAngleRad === undefined ? {} : { nominalAngleRad }),
      ...(shared === undefined ? {} : { shared }),
      tests: [
        {
          hung: hungKg > 0 ? [{ fromTipM: 0, massKg: hungKg }] : [],
          ...seenOf(curve),
        },
      ],
    },
    rows: { setupId: curve.id, curve: true, tests: [{ testId: curve.id, readings: [] }] },
  };
}

/** A stand finds its own drift and looks at the pixels; a lone picture states its drift. */
function seenOf({ shared, points, driftSigmaM }: CurveSetup): Pick<FitCurve, 'points' | 'driftSigmaM'> {
  if (shared !== undefined) return { points };
  return {
    points: points.map(({ xM, yM }) => ({ xM, yM })),
    ...(driftSigmaM === undefined ? {} : { driftSigmaM }),
  };
}

/**
 * A finding on pictures of one stand, its pictures counted as the builder took them: the fit counts all set-ups of its
 * request, the readings by tape among them.
 */
export function countedInStand({ setups }: FitRequest, found: Finding): Finding {
  if (!found.code.startsWith('stand/')) return found;
  const { picture, other } = found.values;
  const count = (value: unknown) => (typeof value === 'number' ? placeInStand(setups, value - 1) : undefined);
  return {
    ...found,
    values: {
      ...found.values,
      ...(picture === undefined ? {} : { picture: count(picture) }),
      ...(other === undefined ? {} : { other: count(other) }),
    },
  };
}

function placeInStand(setups: FitRequest['setups'], index: number): number {
  const nameOf = (setup: FitRequest['setups'][number]) =>
    setup?.kind === 'curve' ? setup.shared : undefined;
  const own = nameOf(setups[index]);
  return setups.slice(0, index + 1).filter((setup) => own !== undefined && nameOf(setup) === own).length;
}
