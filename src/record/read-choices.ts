import { assembleBlank } from '../engine/bench/assemble.ts';
import type { Bench } from '../engine/bench/bench.ts';
import { type BenchFinding, doubtsOf, stopsOf } from '../engine/bench/bench-finding.ts';
import { readStationList } from '../engine/bench/start-list.ts';
import { checkReelLine } from '../engine/flow/check-reel-line.ts';
import {
  type Assumption,
  type Choices,
  type ChosenGuide,
  choiceDefaults,
  type DressChoices,
  type Start,
} from '../engine/flow/choices.ts';
import { commonGuideCount, commonGuides, commonMarks } from '../engine/kinds/common-build.ts';
import { type RodKind, rodKindIds, rodKindOf, usualPlaceRound } from '../engine/kinds/rod-kinds.ts';
import { criteria } from '../engine/layout/criteria.ts';
import type { LayoutLimits } from '../engine/layout/ladder-request.ts';
import { commonFriction, type FrictionRange } from '../engine/layout/real-line.ts';
import type { TapeStep } from '../engine/units/tape-step.ts';
import { tapeSteps } from './fields/layout.ts';
import { limitFields } from './fields/limit-fields.ts';
import type { DocumentState } from './operation.ts';
import { readFinish } from './read-finish.ts';
import { readGuide } from './read-guides.ts';
import { readLine, readReelSide } from './read-line.ts';
import { oneOf, type RowReader, readRows, readSingle } from './read-values.ts';
import { readGuideFeet, readWrapChoices } from './read-wraps.ts';
import { assume, type RecordKinds } from './record-kinds.ts';

const stopAt = stopsOf<RecordKinds>();
const doubtAt = doubtsOf<RecordKinds>();

interface ReadChoices {
  choices: Choices;
  findings: BenchFinding[];
  assumed: Assumption[];
}
/** What the shop has chosen for all builds. */
export interface ShopHabits {
  tapeStep?: TapeStep;
}

/** A build that does not say is a fly rod. */
export function readRodKind(state: DocumentState): RodKind {
  return oneOf(readSingle(state, 'about').text('rodKind'), rodKindIds) ?? 'fly';
}

/** For a blank whose sections are known; what was left open is filled from common practice. */
export function readChoices(state: DocumentState, bench: Bench, habits: ShopHabits = {}): ReadChoices {
  const [about, layout] = [readSingle(state, 'about'), readSingle(state, 'layout')];
  const rod = {
    rodKind: readRodKind(state),
    lineWeight: about.text('lineWeight') ?? '',
    blankLengthM: assembleBlank(bench.sections).lengthM,
  };
  const read: Omit<ReadChoices, 'choices'> = { findings: [], assumed: [] };
  const start = readStart(layout, { ...rod, handle: bench.handle }, read);
  const rows = readRows(state, 'guides');
  const own = rows.filter((row) => row.text('kind') !== 'tip-top');
  const count = own.length > 0 ? own.length : startCount(start);
  const common = commonGuides(rod, count);
  if (own.length === 0) {
    read.assumed.push(assume('guides', 'assumed/guides', { count }));
  }
  const ladderKg = readRows(state, 'ladder').flatMap((row) => row.si('load') ?? []);
  const guides = common.guides.map((guide, index) => readGuide(own[index], guide, read));
  const line = readLine(state, rod.rodKind, bench.sections);
  const choices: Choices = {
    title: about.text('title') ?? 'Untitled build',
    rodKind: rod.rodKind,
    lineWeight: rod.lineWeight,
    demo: about.flag('demo'),
    tipTop: readGuide(
      rows.find((row) => row.text('kind') === 'tip-top'),
      common.tipTop,
      read,
    ),
    guides,
    start: fitStart(start, count, read),
    ladderKg: ladderKg.length > 0 ? ladderKg.sort((a, b) => a - b) : undefined,
    loadBy: oneOf(layout.text('loadBy'), ['line', 'tied']) ?? 'line',
    tautLineKg: layout.orUsual('tautLine'),
    buttAngleRad: layout.orUsual('buttAngle'),
    ...readPlaceRound(state, layout, rod.rodKind),
    intervals: oneOf(layout.text('intervals'), ['growing', 'free']) ?? 'growing',
    limits: readLimits(state, rod.rodKind),
    friction: readFriction(layout, read),
    ferruleClearM: layout.si('ferruleClear'),
    tapeStep: oneOf(layout.text('tapeStep'), tapeSteps) ?? habits.tapeStep ?? '1/8 in',
    dress: readDress(state, guides),
    line: line.line,
  };
  const findings = [
    ...read.findings,
    ...line.findings,
    ...reelLineFindings(choices, bench, rod.blankLengthM),
  ];
  return { choices, ...read, findings };
}

function reelLineFindings(
  { line, guides, start }: Choices,
  { handle }: Bench,
  blankLengthM: number,
): BenchFinding[] {
  const ofStart = start.kind === 'rule' ? start.strippingFromTipM : start.fromTipM.at(-1);
  const firstFromTipM = guides.at(-1)?.stationM ?? ofStart;
  if (!line || firstFromTipM === undefined) return [];
  return checkReelLine({ handle, line, guides, firstFromTipM, blankLengthM });
}

/** Guides in a spiral stand under the rod where it works. */
function readPlaceRound(
  state: DocumentState,
  layout: RowReader,
  rodKind: RodKind,
): Pick<Choices, 'side' | 'spiral'> {
  const place = oneOf(layout.text('guidesSide'), ['under', 'over', 'spiral']) ?? usualPlace(state, rodKind);
  if (place !== 'spiral') return { side: place };
  const { spiral } = choiceDefaults;
  return {
    side: 'under',
    spiral: {
      by: oneOf(layout.text('spiralBy'), ['right', 'left']) ?? spiral.by,
      onTop: layout.orUsual('spiralOnTop'),
      transitions: layout.orUsual('spiralOver'),
    },
  };
}

function readDress(state: DocumentState, guides: readonly ChosenGuide[]): DressChoices {
  const { coatsInAll, coatThicknessM, footHeightM } = readFinish(state);
  return {
    wraps: readWrapChoices(state),
    feet: readGuideFeet(state, guides),
    coatThicknessM,
    coats: coatsInAll,
    footHeightM,
  };
}

function readFriction(layout: RowReader, read: Omit<ReadChoices, 'choices'>): FrictionRange {
  const lowest = layout.orUsual('frictionLowest');
  const highest = layout.number('frictionHighest') ?? Math.max(lowest, commonFriction.highest);
  if (lowest <= highest) return { lowest, highest };
  read.findings.push(doubtAt('layout/-/frictionLowest', 'record/friction-order', { lowest, highest }));
  return { lowest: highest, highest: lowest };
}

/** Rings stand on the reel's side; only a spiral goes under with its reel on top. */
function usualPlace(state: DocumentState, rodKind: RodKind): ReturnType<typeof usualPlaceRound> {
  const usual = usualPlaceRound(rodKind);
  return rodKindOf(rodKind).flyLine || usual === 'spiral' ? usual : readReelSide(state, rodKind);
}

function readLimits(state: DocumentState, rodKind: RodKind): Partial<LayoutLimits> {
  const layout = readSingle(state, 'layout');
  const limits = criteria.map(({ id, quantity }) => {
    const { field, declared } = limitFields[id];
    return [quantity, declared.kind === 'number' ? layout.number(field) : layout.si(field)];
  });
  const first = rodKindOf(rodKind).flyLine ? undefined : readSingle(state, 'line').si('limitFirst');
  const all = [...limits, ['firstLineAngleRad', first]];
  return Object.fromEntries(all.filter(([, value]) => value !== undefined));
}

interface RodToStart {
  rodKind: RodKind;
  blankLengthM: number;
  handle: Bench['handle'];
}

function readStart(layout: RowReader, rod: RodToStart, read: Omit<ReadChoices, 'choices'>): Start {
  const kind = oneOf(layout.text('startKind'), ['rule', 'chart', 'own']) ?? 'rule';
  const text = layout.text('startText');
  if (kind !== 'rule' && text !== undefined) {
    const list = readStationList(text, {
      system: oneOf(layout.text('startUnit'), ['inch', 'mm']) ?? 'inch',
      from: oneOf(layout.text('startFrom'), ['tip', 'butt']) ?? 'tip',
      blankLengthM: rod.blankLengthM,
    });
    if (list.ok) return { kind: 'list', words: kind, fromTipM: list.fromTipM };
    read.findings.push(...list.findings.map((found) => ({ ...found, severity: 'stop' as const })));
  }
  if (kind !== 'rule' && text === undefined) {
    read.findings.push(doubtAt('layout/-/startText', 'record/list-missing', {}));
  }
  return readRule(layout, rod, read);
}

function readRule(layout: RowReader, rod: RodToStart, read: Omit<ReadChoices, 'choices'>): Start {
  const common = commonMarks(rod.rodKind, rod.blankLengthM, rod.handle);
  const first = layout.si('startFirst');
  const stripping = layout.si('startStripping');
  if (first === undefined) {
    const values = { fromTipM: common.firstFromTipM };
    read.assumed.push(assume('layout/-/startFirst', 'assumed/first-guide', values));
  }
  if (stripping === undefined) {
    const values = { fromButtM: rod.blankLengthM - common.strippingFromTipM };
    read.assumed.push(assume('layout/-/startStripping', 'assumed/stripping-guide', values));
  }
  return {
    kind: 'rule',
    count: layout.number('startCount') ?? commonGuideCount(rod.rodKind, rod.blankLengthM),
    firstFromTipM: first ?? common.firstFromTipM,
    strippingFromTipM: stripping ?? common.strippingFromTipM,
  };
}

function startCount(start: Start): number {
  return start.kind === 'rule' ? start.count : start.fromTipM.length;
}

/** As many marks as guides: the rule is spread over the guides there are, a list is asked back. */
function fitStart(start: Start, count: number, read: Omit<ReadChoices, 'choices'>): Start {
  if (start.kind === 'rule') return { ...start, count };
  if (start.fromTipM.length !== count) {
    const values = { given: start.fromTipM.length, guides: count };
    read.findings.push(stopAt('layout/-/startText', 'record/list-count', values));
  }
  return start;
}
