import type { Finding } from '../../engine/finding.ts';
import { buildSureness } from '../../engine/flow/build-sureness.ts';
import { workBuild } from '../../engine/flow.ts';
import { type LearntSeries, learnSeries, longestDifference } from '../../engine/series/learn-series.ts';
import { type SeriesMember, seriesMember } from '../../engine/series/member.ts';
import { benchFit } from '../../engine/stiffness/from-bench.ts';
import type { Cell } from '../../record/operation.ts';
import { readBuild } from '../../record/read-build.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { shopWriter } from '../../words/writer.ts';

/** What a worker makes of one step of a job. Pure: the same data give the same answer, in any thread. */
export function workStep(kind: string, data: unknown): unknown {
  const work = works[kind];
  if (!work) throw new Error(`There is no work called ${kind}`);
  return work(data as never);
}

const works: Record<string, (data: never) => unknown> = {
  'sample shelf': sampleBuild,
  'learn series': seriesStep,
};

interface ShelfBuild {
  build: string;
  title: string;
  cells: [string, Cell][];
}

/** How sure one build's marks are, or why nothing can be said of it. */
function sampleBuild({ build, title, cells }: ShelfBuild) {
  const state = { id: build, kind: 'build' as const, cells: new Map(cells), clock: 0 };
  const { bench, choices, findings } = readBuild(state);
  const stops = findings.filter(({ severity }) => severity === 'stop');
  if (!bench || !choices || stops.length > 0) return { build, title, reason: firstMessage(stops) };
  const work = workBuild(bench, choices);
  if (work.status !== 'done') return { build, title, reason: firstMessage(work.findings) };
  if (!work.posterior) return { build, title, reason: 'Nothing was hung on this blank yet' };
  const { scores, marks } = buildSureness(work.question, work.best.fromTipM, work.posterior);
  return {
    build,
    title,
    marksPlusMinusM: marks.plusMinusM,
    costOfKeeping: marks.costOfKeeping,
    worstRead: work.readings.best.worst,
    worst: scores.proposed?.worst,
    blanks: marks.blanks,
  };
}

/** A blank as the series learns from it, or null where it says too little; at last what all of them say. */
function seriesStep(
  data: ShelfBuild | { members: (SeriesMember | null)[] },
): SeriesMember | LearntSeries | null {
  if ('cells' in data) return memberOf(data);
  const members = data.members.filter((member) => member !== null);
  if (members.length === 0) throw new Error('No blank of this series has been measured yet');
  const longest = Math.max(...members.map(({ lengthM }) => lengthM));
  const shortest = Math.min(...members.map(({ lengthM }) => lengthM));
  if (longest > shortest * (1 + longestDifference))
    throw new Error(
      `The blanks of this series are from ${shortest.toFixed(2)} m to ${longest.toFixed(2)} m long. Blanks of one series are of one length: give the others another name`,
    );
  return learnSeries(members);
}

function memberOf({ build, title, cells }: ShelfBuild): SeriesMember | null {
  const state = { id: build, kind: 'build' as const, cells: new Map(cells), clock: 0 };
  const { bench, findings } = readBuild(state);
  if (!bench || findings.some(({ severity }) => severity === 'stop')) return null;
  const { request } = benchFit(bench);
  return request.setups.length > 0 ? (seriesMember(build, title, request) ?? null) : null;
}

function firstMessage([first]: readonly Finding[]): string {
  return first ? sentenceOf(first, shopWriter({ system: 'mm' })) : 'This build is not complete yet';
}
