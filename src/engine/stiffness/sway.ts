/**
 * A blank that still swung while its picture was taken: it is seen away from rest, along its lowest mode.
 *
 *   ψ ∝ Σ_j (∂y/∂m_j) m_j ψ(s_j)      masses j of the blank and of what hangs; ψ = 1 at the tip
 *
 * by inverse iteration from ψ = ((L − s)/L)²; the pull of a swinging mass counts in the vertical alone, as its weight
 * does. Source: Stodola's inverse iteration for the lowest mode (from memory).
 */
import type { BenchModel } from './bench-model.ts';
import type { ExtraPattern, MostProbable } from './most-probable.ts';
import type { Unknowns } from './unknowns.ts';

/** Of the tip, m: what a builder may overlook. Judgement. */
const swaySigmaM = 0.03;
const rounds = 3;

export interface Sway {
  data: number[];
  pattern: ExtraPattern;
  sigma: number;
}

/** Amplitude: how much lower than at rest the tip is seen. None where the curve does not reach the tip. */
export function swayOf(
  { data, request, rows }: BenchModel,
  { mass }: Unknowns,
  { prediction }: MostProbable,
  setup: number,
): Sway[] {
  const owner = request.setups[setup];
  if (owner.kind === 'span') return [];
  const places = data.flatMap((datum, d) => (datum.kind === 'place' && datum.setup === setup ? [d] : []));
  const { readings } = owner.tests[0];
  const tip = places.at(-1);
  const reachM = owner.clampFromTipM ?? request.blank.lengthM;
  if (tip === undefined || readings[data[tip].reading].fromTipM > 0.03 * reachM) return [];
  let shape = (fromTipM: number) => (Math.max(0, reachM - fromTipM) / reachM) ** 2;
  let pattern: { datum: number; amount: number }[] = [];
  for (let round = 0; round < rounds; round++) {
    const pulled = places.map((d) => {
      const at = d * prediction.size + mass.start;
      const ofBlank = rows.coarse.reduce((sum, s, r) => sum + prediction.jacobian[at + r] * shape(s), 0);
      return ofBlank + prediction.loadSlope[d];
    });
    const most = pulled[pulled.length - 1];
    if (!(most > 0)) return [];
    pattern = places.map((datum, i) => ({ datum, amount: pulled[i] / most }));
    shape = between(
      places.map((d) => readings[data[d].reading].fromTipM),
      pattern.map(({ amount }) => amount),
      reachM,
    );
  }
  return [{ data: places, pattern, sigma: swaySigmaM }];
}

/** Linear between stations that fall from the hold, where nothing moves, to the tip. */
function between(stations: readonly number[], values: readonly number[], reachM: number) {
  return (fromTipM: number): number => {
    if (fromTipM >= reachM) return 0;
    const next = stations.findIndex((station) => station <= fromTipM);
    if (next < 0) return values[values.length - 1];
    const [far, before] = next === 0 ? [reachM, 0] : [stations[next - 1], values[next - 1]];
    const share = (far - fromTipM) / (far - stations[next] || 1);
    return before + share * (values[next] - before);
  };
}
