/**
 * The whole craft on one page: bench → stiffness → bend over the ladder → layout → marks → strips.
 * Everything the command line reports, and what the screen shows piece by piece from the same calls.
 */

import { type AssembledBlank, assembleBlank } from './bench/assemble.ts';
import type { Bench } from './bench/bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench/bench-finding.ts';
import { checkStations } from './bench/check-stations.ts';
import { type DiameterRow, diameterProfile } from './bench/diameter-profile.ts';
import { estimateFromDiameters } from './bench/estimate.ts';
import { checkFerrulesBound } from './bench/ferrule-gate.ts';
import type { BlankTables } from './bench/free-rod.ts';
import { arithmeticRule } from './bench/start-list.ts';
import type { Finding } from './finding.ts';
import { checkRound } from './flow/check-round.ts';
import type { Choices } from './flow/choices.ts';
import { placesRound } from './flow/guides-round.ts';
import { type LayoutQuestion, layoutQuestion } from './flow/layout-question.ts';
import { marksToMake } from './flow/marks-to-make.ts';
import { type StandingMarks, standingMarks } from './flow/standing-marks.ts';
import { guideName } from './kinds/guides.ts';
import { makeLadder, readLadder } from './layout/ladder.ts';
import type { LayoutFound } from './layout/layout.ts';
import { layoutFound } from './layout/layout-kinds.ts';
import { type RuledReading, ruleLadder } from './layout/rule-reading.ts';
import { slackOfLayout } from './layout/slack-of-layout.ts';
import { massForThirdKg } from './layout/tip-load.ts';
import { type GuideToMark, listMarks, type MarksList, marksInOrder } from './marks/marks-list.ts';
import { fitStiffness } from './stiffness/fit.ts';
import { benchFit, inRecord } from './stiffness/from-bench.ts';
import type { Posterior } from './stiffness/posterior.ts';
import type { FitSolved } from './stiffness/request.ts';

export interface BuildWork {
  status: 'done';
  blank: AssembledBlank;
  diameters: DiameterRow[];
  /** What the drops say; undefined where none was read and the diameters' estimate stands in. */
  fitted?: FitSolved;
  /** What blanks may still be drawn from; with `fitted`. */
  posterior?: Posterior;
  tables: BlankTables;
  question: LayoutQuestion;
  /** Weight that drops the tip by a third of the free length, clamped level. */
  thirdLoadKg?: number;
  /** The marks that help on most blanks that fit the readings; the start where none do, or nothing was read. */
  best: LayoutFound;
  /** Where the start stays for want of sureness: the marks that may be better. */
  insteadFromTipM?: readonly number[];
  /** What the rod is read with: power, strain, the line and what finish changes. */
  standing: StandingMarks;
  readings: {
    start?: RuledReading;
    best: RuledReading;
    /** The builder's own marks, where every guide has one. */
    own?: RuledReading;
    standing: RuledReading;
    /** The marks to the tape's tick; undefined where one of them cannot be marked. */
    marked?: RuledReading;
  };
  /** Own marks where there are, else the proposed ones. */
  marks: MarksList;
  marksAre: 'own' | 'proposed';
  findings: Finding[];
}
type BuildOutcome = BuildWork | { status: 'stopped'; findings: Finding[] };
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
  const { tables, fitted, posterior, findings } = stiffnessOf(bench, diameters);
  if (!tables) return { status: 'stopped', findings };
  const question = layoutQuestion({ bench, choices, blank, diameters, tables });
  const { loads } = question;
  if (loads.ladder.length === 0) {
    const { lengthM } = question.rod;
    return {
      status: 'stopped',
      findings: [...findings, layoutFound('ladder', 'layout/no-usual-loads', { lengthM })],
    };
  }
  const stations = stationFindings(blank, question, choices);
  if (stations.some(({ severity }) => severity === 'stop')) {
    return { status: 'stopped', findings: [...findings, ...stations] };
  }
  stage('layout');
  const helping = marksToMake(question.request, posterior && { fit: benchFit(bench).request, posterior });
  if (!('layout' in helping)) {
    return { status: 'stopped', findings: [...findings, ...helping.findings.map(layoutFinding)] };
  }
  const { layout: best, insteadFromTipM } = helping;
  stage('marks');
  const standing = standingMarks({ bench, choices, blank }, question);
  const marks = listMarks(blank, guidesToMark(choices, question, best, diameters), choices.tapeStep, {
    diameters,
    keepOut: question.keepOut,
  });
  const thirdLoadKg = massForThirdKg(question.rod);
  return {
    status: 'done',
    blank,
    diameters,
    fitted,
    posterior,
    tables,
    question,
    thirdLoadKg,
    best,
    insteadFromTipM,
    standing,
    readings: readingsOf(question, { best, standing, marks, diameters }),
    marks,
    marksAre: question.ownFromTipM ? 'own' : 'proposed',
    findings: [
      ...findings,
      ...stations,
      ...ferruleFindings(bench, question, thirdLoadKg),
      ...marks.findings,
      ...checkRound(choices, question.ownFromTipM ?? best.fromTipM, question.keepOut),
    ],
  };
}

/** The builder's own marks where every guide has one, else the proposed ones; with their slack. */
function guidesToMark(
  choices: Choices,
  { ownFromTipM, request }: LayoutQuestion,
  best: LayoutFound,
  diameters: readonly DiameterRow[],
): GuideToMark[] {
  const fromTipM = ownFromTipM ?? best.fromTipM;
  const { keepOut = [] } = request;
  const footM = choices.guides.map(({ lengthM }) => lengthM);
  const slackM = ownFromTipM ? slackOfLayout({ ladder: request, fromTipM, footM, keepOut }) : best.slackM;
  const round = placesRound(choices, fromTipM, diameters);
  return choices.guides.map(({ kind, size }, index) => {
    const { towardsTip, towardsButt } = slackM[index];
    return {
      name: guideName({ kind, size }),
      round: round[index],
      fromTipM: fromTipM[index],
      footM: footM[index],
      slack: { towardsTipM: towardsTip, towardsButtM: towardsButt },
    };
  });
}

function readingsOf(
  { request, startFromTipM, ownFromTipM }: LayoutQuestion,
  { best, standing, marks, diameters }: Pick<BuildWork, 'best' | 'standing' | 'marks' | 'diameters'>,
): BuildWork['readings'] {
  const ladder = makeLadder(request);
  const read = (fromTipM: readonly number[]) =>
    ruleLadder(ladder, fromTipM, readLadder(ladder, fromTipM), diameters);
  const marked = marksInOrder(marks).map(({ fromTipM }) => fromTipM);
  const { count } = request.guides;
  return {
    start: startFromTipM.length === count ? read(startFromTipM) : undefined,
    best: read(best.fromTipM),
    own: ownFromTipM && read(ownFromTipM),
    standing: read(standing.fromTipM),
    marked: marked.length === count ? read(marked) : undefined,
  };
}

/** Readings give the stiffness; without any the diameters' estimate stands in. Diameters there must be. */
function stiffnessOf(bench: Bench, diameters: readonly DiameterRow[]): Stiffness {
  if (diameters.length === 0) {
    return { findings: [stopAt('diameters', 'bench/diameters-few', {})] };
  }
  const taken = benchFit(bench);
  const { request } = taken;
  if (request.setups.length === 0) {
    return {
      tables: estimateFromDiameters(diameters, bench.material),
      findings: [doubtAt('readings', 'bench/no-drops', {})],
    };
  }
  const { answer, posterior } = fitStiffness(request);
  const findings = answer.findings.map((found) => inRecord(taken, found));
  return answer.status === 'refused' ? { findings } : { tables: answer, fitted: answer, posterior, findings };
}

interface Stiffness {
  /** Undefined where there is none, with a finding that says why. */
  tables?: BlankTables;
  fitted?: FitSolved;
  posterior?: Posterior;
  findings: Finding[];
}

/** What is wrong with the start and with the builder's own marks, in his words, before the layout looks at them. */
function stationFindings(blank: AssembledBlank, question: LayoutQuestion, choices: Choices): BenchFinding[] {
  const { keepOut: zones, rod, startFromTipM, ownFromTipM } = question;
  const common = { blank, zones, freeLengthM: rod.lengthM };
  const { start } = choices;
  if (start.kind === 'rule') {
    const rule = arithmeticRule(start);
    if (!rule.ok) return rule.findings.map((found) => ({ ...found, severity: 'stop' as const }));
  }
  const list = checkStations({ ...common, fromTipM: startFromTipM, path: 'layout/-/startText' });
  const own = checkStations({
    ...common,
    fromTipM: ownFromTipM ?? [],
    path: (index) => `guides/${choices.guides[index]?.id ?? index}/station`,
  });
  return [...(start.kind === 'list' ? list : []), ...(ownFromTipM ? own : [])];
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
function layoutFinding(found: Finding): Finding {
  const { path } = found;
  const places: [RegExp, string][] = [
    [/^(firstFromTipM|guides\.count)/, 'layout/-/startFirst'],
    [/^strippingFromTipM/, 'layout/-/startStripping'],
    [/^keepOut/, 'layout/-/ferruleClear'],
    [/^start/, 'layout/-/startText'],
    [/^ladder/, 'ladder'],
  ];
  const place = places.find(([pattern]) => pattern.test(path));
  return { ...found, path: place ? place[1] : `layout/-/${path}` };
}
