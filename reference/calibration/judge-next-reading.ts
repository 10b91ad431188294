/**
 * What the readings proposed next bring on the true rod, against readings at random from the same list: after the
 * ten-minute readings both read on for ten minutes or more, the guides are placed anew, and the worst reading on the
 * true rod is what counts.
 */
import { freeRod } from '../../src/engine/bench/free-rod.ts';
import { marksToMake } from '../../src/engine/flow/marks-to-make.ts';
import { makeLadder, readLadder } from '../../src/engine/layout/ladder.ts';
import { layout } from '../../src/engine/layout/layout.ts';
import { seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { fitStiffness } from '../../src/engine/stiffness/fit.ts';
import type { FitClampSetup, FitRequest } from '../../src/engine/stiffness/request.ts';
import type { Enough } from '../../src/engine/sureness/enough.ts';
import { nextReading } from '../../src/engine/sureness/next-reading.ts';
import type { OptionsQuestion, ReadingOption } from '../../src/engine/sureness/reading-option.ts';
import { readingsOnOffer } from '../../src/engine/sureness/reading-options.ts';
import { freshBench, type ReadOn, take } from '../../test/support/reading-policy.ts';
import { readUnlikeBench } from '../../test/support/unlike-bench.ts';
import { type UnlikeKind, unlikeBlank } from '../../test/support/unlike-blanks.ts';
import { askedLayout, gripM } from './asked-layout.ts';

export interface NextReadingRow {
  seed: number;
  kind: UnlikeKind;
  /** Why none was proposed any more, before ten minutes were over. */
  enough?: Enough;
  /** What ten minutes were said to bring, before they began. */
  said: Said;
  /** The worst reading on the true rod over the least that there is: after the ten-minute readings, and after more. */
  before: number;
  proposed: ReadFurther;
  atRandom: ReadFurther[];
}
export interface ReadFurther {
  worst: number;
  minutes: number;
}
export interface Said {
  /** Share of the worst reading that is to come off. */
  gain: number;
  /** Where the start stays for want of sureness: that the marks move. */
  chance?: number;
}

export const minutesMore = 10;
const chances = [1, 2, 3];

/** Undefined where the true rod finds no bend under some load. */
export function judgeNextReading(seed: number): NextReadingRow | undefined {
  const blank = unlikeBlank(seed);
  const { rod, ...asked } = askedLayout(blank);
  const truth = layout({ ...asked, rod });
  if (truth.status === 'refused') return undefined;
  const onTruth = makeLadder({ ...asked, rod });
  const worstAfter = (bench: ReadOn) => {
    const marks = marksFor(bench, asked)?.helping.layout.fromTipM;
    const read = marks && readLadder(onTruth, marks);
    return !read || read.status === 'not-converged' ? Number.NaN : read.worst / truth.leastWorst;
  };
  const begun = () => tenMinuteBench(seed);
  let enough: Enough | undefined;
  let said: Said | undefined;
  const choose = (bench: ReadOn): ReadingOption | undefined => {
    const next = proposedFor(bench, asked);
    enough = next?.enough;
    said ??= { gain: next?.tenMinutes?.gain ?? 0, chance: next?.tenMinutes?.option.settles?.chance };
    return enough ? undefined : next?.options[0];
  };
  const after = (how: (bench: ReadOn) => ReadingOption | undefined): ReadFurther => {
    const bench = readOn(begun(), how);
    return { worst: worstAfter(bench), minutes: bench.minutes };
  };
  const row = {
    seed,
    kind: blank.kind,
    before: worstAfter(begun()),
    proposed: after(choose),
    atRandom: chances.map((chance) => after(anyReading(seededRandom(1000 * seed + chance)))),
  };
  const found = [row.before, row.proposed.worst, ...row.atRandom.map(({ worst }) => worst)];
  return said && found.every(Number.isFinite) ? { ...row, enough, said } : undefined;
}

/** A clamp that is set once, and one weight read at four flags beside the blank with nothing hung. */
function tenMinuteBench(seed: number): ReadOn {
  const blank = unlikeBlank(seed);
  const { request } = readUnlikeBench(blank, 'one weight', seed);
  const [{ clampFromTipM, tests }] = request.setups as FitClampSetup[];
  const loads = tests.map(({ hung = [], readings }) => ({
    massKg: hung[0]?.massKg ?? 0,
    readFromTipM: readings.map(({ fromTipM }) => fromTipM).filter((at) => at < clampFromTipM),
  }));
  const bench = freshBench(blank, request.blank, seed);
  take(bench, { clampFromTipM, turnedRad: 0, loads, readings: 2 * loads[0].readFromTipM.length, minutes: 0 });
  return bench;
}

function readOn(bench: ReadOn, how: (bench: ReadOn) => ReadingOption | undefined): ReadOn {
  while (bench.minutes < minutesMore) {
    const option = how(bench);
    if (!option) break;
    take(bench, option);
  }
  return bench;
}

function asRequest({ fitBlank, setups, spans }: ReadOn): FitRequest {
  return { blank: fitBlank, setups: structuredClone([...spans, ...setups]) };
}

function questionOf(bench: ReadOn) {
  const fit = asRequest(bench);
  const { answer, posterior } = fitStiffness(fit);
  if (answer.status === 'refused' || !posterior) return undefined;
  const question: OptionsQuestion = { fit, standing: fit.setups.length - 1, tables: answer };
  return { question, posterior };
}

/** The marks that the page would propose. */
function marksFor(bench: ReadOn, asked: Omit<ReturnType<typeof askedLayout>, 'rod'>) {
  const known = questionOf(bench);
  if (!known) return undefined;
  const request = { ...asked, rod: freeRod(known.question.tables, bench.blank.lengthM - gripM) };
  const helping = marksToMake(request, { fit: known.question.fit, posterior: known.posterior });
  return 'layout' in helping ? { ...known, request, helping } : undefined;
}

function proposedFor(bench: ReadOn, asked: Omit<ReturnType<typeof askedLayout>, 'rod'>) {
  const marked = marksFor(bench, asked);
  if (!marked) return undefined;
  const { question, posterior, request, helping } = marked;
  const { fromTipM: proposedFromTipM, slackM } = helping.layout;
  const { insteadFromTipM } = helping;
  return nextReading({ ...question, posterior, request, proposedFromTipM, slackM, insteadFromTipM });
}

function anyReading(random: () => number) {
  return (bench: ReadOn): ReadingOption | undefined => {
    const known = questionOf(bench);
    if (!known) return undefined;
    const all = readingsOnOffer(known.question).flatMap(
      (offer): { option: ReadingOption }[] => offer.options,
    );
    return all[Math.floor(random() * all.length)]?.option;
  };
}
