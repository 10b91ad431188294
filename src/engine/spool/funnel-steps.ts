/**
 * Ring sizes stepped down from the first ring to the running guides by a straight funnel (funnel.ts): at every place
 * the smallest ring that the builder has and that is as wide inside as the funnel there, never wider than the ring
 * before it. Each step says what it was chosen by.
 */
import { funnelEnds, insideNeededM, type RingOnRod } from './funnel.ts';

export interface SizeOnHand {
  name: string;
  insideM: number;
}
export interface FunnelStepsQuestion {
  lip: { alongM: number; lipDiameterM: number };
  /** The first ring as chosen. */
  first: RingOnRod;
  /** Where the rings after it stand, from the reel towards the tip; the running guides may be among them. */
  alongM: readonly number[];
  /** Where the running guides begin, and their size. */
  running: RingOnRod;
  sizes: readonly SizeOnHand[];
  /** The thickest knot that must pass. */
  knotM?: number;
}
export interface FunnelStep {
  alongM: number;
  /** Inside that the funnel asks for there. */
  neededM: number;
  /** Undefined where nothing on hand will do. */
  size?: SizeOnHand;
  because: /** The smallest on hand that is as wide as the funnel. */
    | 'funnel'
    /** The funnel is as narrow as a running guide here. */
    | 'running'
    /** The funnel would let a smaller one do, the knot would not. */
    | 'knot'
    /** Nothing on hand is as wide as the funnel without being wider than the ring before it: the ring before it again. */
    | 'as-before'
    | 'none-wide-enough';
}

export function funnelSteps(question: FunnelStepsQuestion): FunnelStep[] {
  const { lip, first, running, sizes, knotM = 0 } = question;
  const ends = funnelEnds(lip, [running]);
  const ascending = sizes.toSorted((a, b) => a.insideM - b.insideM);
  let beforeM = first.insideM;
  return question.alongM.map((alongM) => {
    const neededM = insideNeededM(ends, alongM);
    const step = {
      alongM,
      neededM,
      ...chosen({ neededM, knotM, beforeM, runningM: running.insideM }, ascending),
    };
    beforeM = step.size?.insideM ?? beforeM;
    return step;
  });
}

interface Wanted {
  neededM: number;
  knotM: number;
  beforeM: number;
  runningM: number;
}

function chosen(
  { neededM, knotM, beforeM, runningM }: Wanted,
  ascending: readonly SizeOnHand[],
): Pick<FunnelStep, 'size' | 'because'> {
  const wideAs = (leastM: number) => ascending.find(({ insideM }) => insideM >= leastM - closeM);
  const byFunnel = wideAs(neededM);
  const size = ascending.find(({ insideM }) => insideM >= neededM - closeM && insideM > knotM);
  if (size && size.insideM <= beforeM + closeM) {
    if (size !== byFunnel) return { size, because: 'knot' };
    return { size, because: neededM <= runningM + closeM ? 'running' : 'funnel' };
  }
  const before = ascending.findLast(({ insideM }) => insideM <= beforeM + closeM && insideM > knotM);
  return before ? { size: before, because: 'as-before' } : { because: 'none-wide-enough' };
}

/** Two openings are the same within a hundredth of a millimetre. */
const closeM = 1e-5;
