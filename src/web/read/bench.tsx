import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { type AssembledBlank, assembleBlank } from '../../engine/bench/assemble.ts';
import type { Bench } from '../../engine/bench/bench.ts';
import type { BenchFinding } from '../../engine/bench/bench-finding.ts';
import { checkBench } from '../../engine/bench/check.ts';
import { type DiameterRow, diameterProfile } from '../../engine/bench/diameter-profile.ts';
import { useBuild } from './build.tsx';
import { interimBench } from './interim-bench.ts';
import { type Troubles, TroublesContext } from './troubles.tsx';

/** The bench as the engine sees it, computed once for every state of the record. */
export interface BenchReading {
  bench: Bench;
  findings: readonly BenchFinding[];
  /** Undefined while a finding stops the sections from being put together. */
  blank: AssembledBlank | undefined;
  /** Outside diameters along it; empty without it. */
  profile: readonly DiameterRow[];
}

const BenchContext = createContext<BenchReading | undefined>(undefined);

export function useBench(): BenchReading {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error('useBench needs a BenchProvider above it');
  return bench;
}

export function BenchProvider({ children }: { children: ReactNode }) {
  const { document } = useBuild();
  const reading = useMemo<BenchReading>(() => {
    const bench = interimBench(document);
    const findings = checkBench(bench);
    const stopped =
      bench.sections.length === 0 ||
      findings.some(({ path, severity }) => severity === 'stop' && path.startsWith('sections'));
    const blank = stopped ? undefined : assembleBlank(bench.sections);
    return { bench, findings, blank, profile: blank ? diameterProfile(bench.sections, blank) : [] };
  }, [document]);
  const troubles = useMemo<Troubles>(
    () => new Map(reading.findings.map(({ path, message }) => [path, message])),
    [reading],
  );
  return (
    <BenchContext value={reading}>
      <TroublesContext value={troubles}>{children}</TroublesContext>
    </BenchContext>
  );
}
