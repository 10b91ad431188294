/**
 * Whether other marks lead the start's on the blanks that fit, and, where the start stays because they do so on too few
 * (marks-that-help.ts), whether a reading would move them. Over those blanks the lead
 * ln(worst of the start / worst of the others) is made a standard normal by its ranks; 0 lies t below its middle.
 * Readings r = W ξ + t τ + ε explain the share R² of it (regression on the drawn blanks). Having read them it is known to
 * √(1-R²), and the marks move where Φ reaches the share b asked for, which is to be expected with the chance
 *   Φ(a),   a = (t - k √(1-R²)) / R,   k = Φ⁻¹(b)
 * and lowers the worst by s (t Φ(a) + R φ(a)) in ln, s the leads' own spread (expected value of sample information
 * for a choice of two; Raiffa & Schlaifer 1961, from memory). A normal lead so far above 0 gains enough for what it
 * loses; where the leads' own tail is heavier than that, k is larger by as much.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LeadAsked, LeadCounts } from '../layout/verdict.ts';
import { bracketedRoot } from '../numerics/bracketed-root.ts';
import { factorCholesky, solveLower } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import { normalBelow, normalDensity, normalQuantile } from '../numerics/normal.ts';
import { drawStates } from '../stiffness/draw-states.ts';
import type { HowRead } from '../stiffness/how-read.ts';
import { type Posterior, rodOf, spreadAt } from '../stiffness/posterior.ts';
import type { SeenReading } from './readings-seen.ts';
import { quantile } from './spread.ts';

/** A loss that a builder would mind, as a share of the start's worst. */
const loss = 0.03;
/**
 * Share of blanks on which other marks must lead, and as how many gains of its size a loss counts. From one hold much of
 * what is known is belief beforehand, and more is asked. Both by simulated benches: docs/calibration.md.
 */
export const asked = {
  'one-hold': { better: 0.87, lossWeight: 12 },
  more: { better: 0.8, lossWeight: 8 },
} as const satisfies Record<ReadAs, { better: number; lossWeight: number }>;

/** How a bench that tells of its stiffness was read. */
export type ReadAs = Exclude<HowRead, 'nothing'>;

/** Of the blanks on which both bend. */
export function countLeads(leads: readonly number[]): LeadCounts {
  return {
    better: leads.filter((lead) => lead > 0).length,
    worse: leads.filter((lead) => lead < -Math.log1p(loss)).length,
    of: leads.length,
  };
}

export function leadAsked(counts: LeadCounts, readAs: ReadAs): LeadAsked {
  return { ...counts, wanted: Math.round(100 * asked[readAs].better), oneHold: readAs === 'one-hold' };
}

/** Guides are moved where that helps on most of the blanks, and gains outweigh losses by far. */
export function helps(leads: readonly number[], readAs: ReadAs): boolean {
  return worthOf(leads, readAs) > 0 && countLeads(leads).better >= asked[readAs].better * leads.length;
}

/** Gains less losses, a loss counted as so many gains. */
function worthOf(leads: readonly number[], readAs: ReadAs): number {
  return leads.reduce((sum, lead) => sum + (lead > 0 ? lead : asked[readAs].lossWeight * lead), 0);
}

/** ln(worst of `theirs` / worst of `ours`) on one blank; undefined where some load of either finds no bend. */
export function leadOn(
  request: LadderRequest,
  blank: BlankTables,
  { ours, theirs }: { ours: readonly number[]; theirs: readonly number[] },
): number | undefined {
  const rod = freeRod(blank, request.rod.lengthM);
  const [first, second] = [ours, theirs].map((marks) => readLadder(makeLadder({ ...request, rod }), marks));
  if (first.status === 'not-converged' || second.status === 'not-converged') return undefined;
  return Math.log(second.worst / first.worst);
}

export interface Lead {
  counts: LeadCounts;
  /** ξ of each blank, and its lead as a standard normal by rank. */
  spreads: readonly Float64Array[];
  scores: Float64Array;
  /** How far zero lies below the middle of the scores; the leads' spread in ln. */
  above: number;
  spread: number;
  /** How far it must: k, or farther where the leads have so heavy a tail that gains outweigh losses only there. */
  wanted: Readonly<Record<ReadAs, number>>;
}

interface LeadQuestion {
  posterior: Posterior;
  request: LadderRequest;
  marks: { ours: readonly number[]; theirs: readonly number[] };
}

/** Undefined where too few of the blanks bend to tell. */
export function leadOver(
  { posterior, request, marks }: LeadQuestion,
  { drawn, seed }: { drawn: number; seed: number },
): Lead | undefined {
  const led = drawStates(posterior.drawing, drawn, seed).flatMap((state) => {
    const { stiffness, massPerLength = [], restCurvature } = rodOf(posterior, state);
    const lead = leadOn(request, { stiffness, massPerLength, restCurvature }, marks);
    return lead === undefined ? [] : [{ lead, spread: spreadAt(posterior, state) }];
  });
  if (led.length < 30) return undefined;
  led.sort((a, b) => a.lead - b.lead);
  const [leads, of] = [led.map(({ lead }) => lead), led.length];
  const counts = countLeads(leads);
  const above = normalQuantile((counts.better + 0.5) / (of + 1));
  const [lower, upper] = [0.25, 0.75].map((share) => quantile(leads, share));
  // the quartiles of a standard normal lie 1.349 apart
  const spread = (upper - lower) / 1.349;
  return {
    counts,
    spreads: led.map(({ spread }) => spread),
    scores: Float64Array.from(leads, (_, rank) => normalQuantile((rank + 0.5) / of)),
    above,
    spread,
    wanted: {
      'one-hold': wantedAbove(leads, { above, spread }, 'one-hold'),
      more: wantedAbove(leads, { above, spread }, 'more'),
    },
  };
}

export function wantedAbove(
  leads: readonly number[],
  { above, spread }: Pick<Lead, 'above' | 'spread'>,
  readAs: ReadAs,
): number {
  const worth = (shift: number) =>
    worthOf(
      leads.map((lead) => lead + shift * Math.max(spread, least)),
      readAs,
    );
  const ends = [-farShift, farShift].map((x) => ({ x, f: worth(x) }));
  const { high } = bracketedRoot(
    worth,
    { low: ends[0], high: ends[1] },
    { toleranceX: 1e-3, toleranceF: 0, maxEvaluations: 60 },
  );
  return Math.max(normalQuantile(asked[readAs].better), above + high.x);
}

/** In spreads; so far off all lead, or none does. A spread of leads that are all alike. */
const farShift = 100;
const least = 1e-6;

/** What a reading does to the choice between the start and the other marks. */
export interface Settles {
  /** That it moves the marks. */
  chance: number;
  /** By how much of itself the worst reading is to be expected to fall, marks that stay counted as none. */
  gain: number;
}

/** `readAs`: how the bench is read once they are taken. */
export function settles(lead: Lead, readings: readonly SeenReading[], readAs: ReadAs): Settles {
  const share = shareExplained(lead, readings);
  if (share <= 0) return { chance: 0, gain: 0 };
  const { above, spread, wanted } = lead;
  const told = Math.sqrt(share);
  const a = (above - wanted[readAs] * Math.sqrt(1 - share)) / told;
  const fall = spread * (above * normalBelow(a) + told * normalDensity(a));
  return { chance: normalBelow(a), gain: Math.max(0, 1 - Math.exp(-fall)) };
}

/** R² on the drawn blanks, less what so many readings explain of so few by chance; below 1. */
function shareExplained({ spreads, scores }: Lead, readings: readonly SeenReading[]): number {
  const n = readings.length;
  const shown = readings.map(({ bySpread }) => centred(spreads.map((spread) => dot(bySpread, spread))));
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      covariance[i * n + j] =
        dot(shown[i], shown[j]) / scores.length +
        readings[i].byTiltM * readings[j].byTiltM +
        (i === j ? readings[i].sigmaM ** 2 : 0);
    }
  }
  if (!factorCholesky(covariance, n)) throw new Error('readings with no scatter of their own');
  const withLead = Float64Array.from(shown, (values) => dot(values, scores) / scores.length);
  solveLower(covariance, n, withLead, withLead);
  const explained = dot(withLead, withLead);
  const adjusted = 1 - ((1 - explained) * (scores.length - 1)) / Math.max(1, scores.length - 1 - n);
  return Math.min(0.98, adjusted);
}

function centred(values: readonly number[]): Float64Array {
  const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Float64Array.from(values, (value) => value - middle);
}
