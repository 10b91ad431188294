import type { Bench } from './bench.ts';
import { type BenchFinding, doubtAt } from './bench-finding.ts';

/** Room for an estimate that is not yet a measurement. */
const estimateMargin = 1.1;

/**
 * Sleeve ferrules that are not wrapped can split under a heavy load. Above the weight that drops the tip by a
 * third of the length the builder is asked to bind them first; `path` is where the weight stands.
 */
export function checkFerrulesBound(
  bench: Pick<Bench, 'sections' | 'ferrulesBound'>,
  load: { path: string; massKg: number; thirdLoadKg: number },
): BenchFinding[] {
  const sleeved = bench.sections.some(({ joint }) => joint?.kind === 'sleeve' || joint?.kind === 'put-over');
  if (!sleeved || bench.ferrulesBound || load.massKg <= estimateMargin * load.thirdLoadKg) return [];
  const { massKg, thirdLoadKg: thirdKg } = load;
  return [doubtAt(load.path, 'bench/ferrules-unbound', { massKg, thirdKg })];
}
