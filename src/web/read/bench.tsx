import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { type AssembledBlank, assembleBlank } from '../../engine/bench/assemble.ts';
import type { Bench } from '../../engine/bench/bench.ts';
import type { BenchFinding } from '../../engine/bench/bench-finding.ts';
import { type DiameterRow, diameterProfile } from '../../engine/bench/diameter-profile.ts';
import type { Finding } from '../../engine/finding.ts';
import type { Assumption, Choices } from '../../engine/flow/choices.ts';
import { withSeries } from '../../engine/series/use-of-series.ts';
import { type BenchFit, benchFit, inRecord } from '../../engine/stiffness/from-bench.ts';
import type { FitSolved, SeriesPrior } from '../../engine/stiffness/request.ts';
import type { DocumentState } from '../../record/operation.ts';
import { type BuildReading, readBuild } from '../../record/read-build.ts';
import { withHabits } from '../../record/shop-habits.ts';
import { sentenceOf } from '../../words/sentence.ts';
import type { Writer } from '../../words/writer.ts';
import { useFit } from '../worker/use-fit.ts';
import { useBuild } from './build-context.ts';
import { useShop } from './shop.tsx';
import { type Troubles, TroublesContext } from './troubles.tsx';
import { type SeriesReading, useSeries } from './use-series.ts';

/** The build as the engine sees it, read once for every state of the record. */
export interface BenchReading {
  /** The build with the shop's habits where it says nothing itself. */
  filled: DocumentState;
  /** Undefined while the sections make no blank. */
  bench: Bench | undefined;
  choices: Choices | undefined;
  findings: readonly BenchFinding[];
  /** What common practice stands in for. */
  assumed: readonly Assumption[];
  blank: AssembledBlank | undefined;
  /** Outside diameters along it; empty without it. */
  profile: readonly DiameterRow[];
  /** Undefined while a finding stops it, or nothing was read. */
  fit: BenchFit | undefined;
  stiffness: Stiffness;
  /** The other blanks of its series, where the builder wants them heard. */
  series: SeriesReading;
}

/** What is known of the stiffness: worked out in the background again whenever a row changes. */
export interface Stiffness {
  /** Of the bench as it is, or, while `working`, as it was a moment ago. */
  solved: FitSolved | undefined;
  working: boolean;
  /** Why there is none. */
  failure: string | undefined;
  /** What the fit finds odd, at the record's paths. */
  findings: readonly Finding[];
}

const BenchContext = createContext<BenchReading | undefined>(undefined);

export function useBench(): BenchReading {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error('useBench needs a BenchProvider above it');
  return bench;
}

export function BenchProvider({ children }: { children: ReactNode }) {
  const { document } = useBuild();
  const { tapeStep, writer, document: shop } = useShop();
  const filled = useMemo(() => withHabits(document, shop), [document, shop]);
  const alone = useMemo(() => putTogether(readBuild(filled, { tapeStep })), [filled, tapeStep]);
  const series = useSeries(alone.fit, alone.blank?.lengthM);
  const prior = series.answer?.prior;
  const read = useMemo(() => ({ ...alone, fit: alone.fit && heard(alone.fit, prior) }), [alone, prior]);
  const stiffness = useStiffness(read.fit, writer);
  const reading = useMemo(() => ({ ...read, filled, series, stiffness }), [read, filled, series, stiffness]);
  const troubles = useMemo(() => troublesOf(reading, writer), [reading, writer]);
  return (
    <BenchContext value={reading}>
      <TroublesContext value={troubles}>{children}</TroublesContext>
    </BenchContext>
  );
}

function putTogether({
  bench,
  choices,
  findings,
  assumed,
}: BuildReading): Omit<BenchReading, 'stiffness' | 'filled' | 'series'> {
  const blank = bench && bench.sections.length > 0 ? assembleBlank(bench.sections) : undefined;
  if (!bench || !blank) {
    return { bench, choices, findings, assumed, blank: undefined, profile: [], fit: undefined };
  }
  const stopped = findings.some(
    ({ path, severity }) => severity === 'stop' && !/^(layout|guides)/.test(path),
  );
  return {
    bench,
    choices,
    findings,
    assumed,
    blank,
    profile: diameterProfile(bench.sections, blank),
    fit: stopped ? undefined : benchFit(bench),
  };
}

/** Everything that follows, the band and the sureness of marks included, hears the series with the readings. */
function heard(fit: BenchFit, prior: SeriesPrior | undefined): BenchFit {
  return prior ? { ...fit, request: withSeries(fit.request, prior) } : fit;
}

function useStiffness(fit: BenchFit | undefined, writer: Writer): Stiffness {
  const { answer, working, failure } = useFit(fit && fit.request.setups.length > 0 ? fit.request : undefined);
  return useMemo(() => {
    const solved = answer && answer.status !== 'refused' ? answer : undefined;
    const findings = (answer?.findings ?? []).map((found) => (fit ? inRecord(fit, found) : found));
    const unsettled = solved?.reason && sentenceOf(solved.reason, writer);
    return { solved, working, failure: failure ?? unsettled, findings };
  }, [answer, working, failure, fit, writer]);
}

function troublesOf(
  { findings, stiffness }: Pick<BenchReading, 'findings' | 'stiffness'>,
  writer: Writer,
): Troubles {
  return new Map([...stiffness.findings, ...findings].map((one) => [one.path, sentenceOf(one, writer)]));
}
