/**
 * A stretch of the blank on two supports, loaded and read midway, with nothing hung and then with a weight. It tells the
 * stiffness there and nowhere else, whatever the clamp's tilt. The weight makes it sag by 1.5 % of the span, which
 * strains a blank of 10 mm on half a metre by 0.15 %. The sag is read to 0.5 mm, with a rule against a taut thread
 * over the supports (common practice, no source).
 */
import { handyWeightWithin } from '../bench/protocol.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import type { FitSpanSetup } from '../stiffness/request.ts';
import { standardGravity } from '../units/gravity.ts';
import type { OptionsQuestion, ReadingOption } from './reading-option.ts';

export interface SpanOnOffer {
  kind: 'span';
  setup: FitSpanSetup;
  options: { rows: number[]; option: ReadingOption }[];
}

export const spanSigmaM = 0.0005;

/** Middles of the stretch over the blank's length. */
const shares = [0.2, 0.35, 0.5, 0.65, 0.8];
const sagShare = 0.015;
/** To the tablet and back 1.5, two supports 2, a weight 1, two readings: a bench's habit (common practice, no source). */
const minutes = 5.5;

export function spansOnOffer({ fit, tables }: OptionsQuestion): SpanOnOffer[] {
  const { lengthM } = fit.blank;
  const spanM = Math.min(0.5, 0.3 * lengthM);
  const stiffness = piecewiseLinear(
    tables.stiffness.map(({ fromTipM }) => fromTipM),
    tables.stiffness.map(({ EINm2 }) => EINm2),
  );
  return shares.map((share): SpanOnOffer => {
    const loadFromTipM = Math.round(1000 * share * lengthM) / 1000;
    const [a, b] = [-0.5, 0.5].map((side) => Math.round(1000 * (loadFromTipM + side * spanM)) / 1000);
    // F = 48 EI sag / span³, midway on a span of even stiffness
    const massKg = handyWeightWithin(
      (48 * valueAt(stiffness, loadFromTipM) * sagShare * spanM) / spanM ** 3 / standardGravity,
    );
    const supportsFromTipM: [number, number] = [a, b];
    const tests = [0, massKg].map((kg) => ({ massKg: kg, sagM: 0, sigmaM: spanSigmaM }));
    const option: ReadingOption = {
      supportsFromTipM,
      clampFromTipM: b,
      turnedRad: 0,
      loads: tests.map((test) => ({ massKg: test.massKg, readFromTipM: [loadFromTipM] })),
      readings: 2,
      minutes,
    };
    const setup: FitSpanSetup = { kind: 'span', supportsFromTipM, loadFromTipM, tests };
    return { kind: 'span', setup, options: [{ rows: [0, 1], option }] };
  });
}
