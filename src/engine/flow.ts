/**
 * The whole craft on one page: bench → stiffness → bend over the ladder → layout → marks → strips.
 * Everything the command line reports, and what the screen shows piece by piece from the same calls.
 */
import { type AssembledBlank, assembleBlank } from './bench/assemble.ts';
import type { Bench } from './bench/bench.ts';
import type { BenchFinding } from './bench/bench-finding.ts';
import { checkStations } from './bench/check-stations.ts';
import { type DiameterRow, diameterProfile } from './bench/diameter-profile.ts';
import { estimateFromDiameters } from './bench/estimate.ts';
import { checkFerrulesBound } from './bench/ferrule-gate.ts';
import type { BlankTables } from './bench/free-rod.ts';
import type { Finding } from './finding.ts';
import type { Choices } from './flow/choices.ts';
import { type LayoutQuestion, layoutQuestion } from './flow/layout-question.ts';
import { makeLadder, readLadder } from './layout/ladder.ts';
import { type LayoutFound, layout } from './layout/layout.ts';
import { type RuledReading, ruleLadder } from './layout/rule-reading.ts';
import { tipLoadForThird } from './layout/tip-load.ts';
import { listMarks, type MarksList, marksInOrder } from './sheets/marks-list.ts';
import { fit } from './stiffness/fit.ts';
import { benchFit, recordPath } from './stiffness/from-bench.ts';
import type { FitSolved } from './stiffness/request.ts';
import { standardGravity } from './units/gravity.ts';

export interface BuildWork {
  status: 'done';
  blank: AssembledBlank;
  diameters: DiameterRow[];
  /** What the drops say; undefined where none was read and the diameters' estimate stands in. */
  fitted?: FitSolved;
  tables: BlankTables;
  question: LayoutQuestion;
  /** Weight that drops the tip by a third of the free length, clamped level. */
  thirdLoadKg?: number;
  /** The layout for this blank. */
  best: LayoutFound;
  readings: {
    start?: RuledReading;
    best: RuledReading;
    /** The builder's own marks, where every guide has one. */
    own?: RuledReading;
    /** The marks to the tape's tick; undefined where one of them cannot be marked. */
    marked?: RuledReading;
  };
  /** Own marks where there are, else the proposed ones. */
  marks: MarksList;
  marksAre: 'own' | 'proposed';
  findings: Finding[];
}
export type BuildOutcome = BuildWork | { status: 'stopped'; findings: Finding[] };
export type BuildStage = 'stiffness' | 'layout' | 'marks';

/** A bench and choices that were read without a `stop`; `stage` hears of each step before it is taken. */
export function workBuild(
  bench: Bench,
  choices: Choices,
  stage: (begun: BuildStage) => void = () => undefined,
): BuildOutcome {
  const blank = assembleBlank(bench.sections);
  const diameters = diameterProfile(bench.sections, blank);
  stage('stiffness');
  const stiffness = stiffnessOf(bench, diameters);
  if (!stiffness.tables) return { status: 'stopped', findings: stiffness.findings };
  const { tables, fitted } = stiffness;
  const question = layoutQuestion({ bench, choices, blank, diameters, tables });
  if (question.loads.ladder.length === 0)
    return stopped('ladder', `No load ladder: ${question.loads.missing}. Give the loads.`);
  stage('layout');
  const best = layout(question.request);
  if (best.status === 'refused') {
    return { status: 'stopped', findings: [...stiffness.findings, ...best.findings.map(layoutFinding)] };
  }
  stage('marks');
  const read = (fromTipM: readonly number[]) => {
    const ladder = makeLadder(question.request);
    return ruleLadder(ladder, fromTipM, readLadder(ladder, fromTipM), diameters);
  };
  const { ownFromTipM: own, startFromTipM: start } = question;
  const guides = choices.guides.map(({ kind, size }, index) => ({
    name: `${kind} ${size}`.trim(),
    fromTipM: (own ?? best.fromTipM)[index],
    slack: own
      ? undefined
      : { towardsTipM: best.slackM[index].towardsTip, towardsButtM: best.slackM[index].towardsButt },
  }));
  const marks = listMarks(blank, guides, choices.tapeStep);
  const marked = marksInOrder(marks).map(({ fromTipM }) => fromTipM);
  const thirdLoadKg = thirdLoad(question);
  return {
    status: 'done',
    blank,
    diameters,
    fitted,
    tables,
    question,
    thirdLoadKg,
    best,
    readings: {
      start: start.length === choices.guides.length ? read(start) : undefined,
      best: read(best.fromTipM),
      own: own && read(own),
      marked: marked.length === guides.length ? read(marked) : undefined,
    },
    marks,
    marksAre: own ? 'own' : 'proposed',
    findings: [
      ...stiffness.findings,
      ...stationFindings(blank, question, choices),
      ...ferruleFindings(bench, question, thirdLoadKg),
      ...marks.findings,
    ],
  };
}

/** Readings give the stiffness; without any the diameters' estimate stands in; without diameters there is none. */
function stiffnessOf(bench: Bench, diameters: readonly DiameterRow[]) {
  const { request, rows } = benchFit(bench);
  const answer = request.setups.length > 0 ? fit(request) : undefined;
  const findings = (answer?.findings ?? []).map(({ path, message }) => ({
    path: recordPath(rows, path),
    message,
  }));
  if (answer && answer.status !== 'refused') return { tables: answer, fitted: answer, findings };
  if (answer || diameters.length === 0) {
    const message = 'Neither a drop nor a diameter was measured: start with the diameters at tip and butt.';
    return { findings: findings.length > 0 ? findings : [{ path: 'diameters', message }] };
  }
  return { tables: estimateFromDiameters(diameters, bench.material), findings };
}

function thirdLoad({ rod }: LayoutQuestion): number | undefined {
  const { status, tipN } = tipLoadForThird(rod);
  return status === 'converged' ? tipN / standardGravity : undefined;
}

function stationFindings(blank: AssembledBlank, question: LayoutQuestion, choices: Choices): BenchFinding[] {
  const { keepOut: zones, rod, startFromTipM, ownFromTipM } = question;
  const common = { blank, zones, freeLengthM: rod.lengthM };
  const start = checkStations({ ...common, fromTipM: startFromTipM, path: 'layout/-/startText' });
  const own = checkStations({
    ...common,
    fromTipM: ownFromTipM ?? [],
    path: (index) => `guides/${choices.guides[index]?.id ?? index}/station`,
  });
  return [...(choices.start.kind === 'list' ? start : []), ...(ownFromTipM ? own : [])];
}

/** The heaviest load alone: what is said of it holds for the ones below. */
function ferruleFindings(
  bench: Bench,
  { loads }: LayoutQuestion,
  thirdLoadKg: number | undefined,
): BenchFinding[] {
  const heaviest = Math.max(...loads.kg);
  if (thirdLoadKg === undefined) return [];
  return checkFerrulesBound(bench, { path: 'ladder', massKg: heaviest, thirdLoadKg });
}

/** A refusal of the layout at the field that the builder knows. */
function layoutFinding({ path, message }: Finding): Finding {
  const places: [RegExp, string][] = [
    [/^(firstFromTipM|guides\.count)/, 'layout/-/startFirst'],
    [/^strippingFromTipM/, 'layout/-/startStripping'],
    [/^keepOut/, 'layout/-/ferruleClear'],
    [/^start/, 'layout/-/startText'],
    [/^ladder/, 'ladder'],
  ];
  const place = places.find(([pattern]) => pattern.test(path));
  return { path: place ? place[1] : `layout/-/${path}`, message };
}

function stopped(path: string, message: string): BuildOutcome {
  return { status: 'stopped', findings: [{ path, message }] };
}
