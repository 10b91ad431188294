import { strainLevels, strainVerdict } from '../engine/bench/strain.ts';
import { criteriaIn } from '../engine/layout/criteria.ts';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import type { MarksList } from '../engine/marks/marks-list.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatOnTape } from '../engine/units/tape-step.ts';
import { buildSchema } from '../record/schema.ts';
import { criterionWords } from '../words/criteria.ts';
import { choiceText } from '../words/field-text.ts';
import { agreementWords, clampsWords } from '../words/fit.ts';
import { type LadderWriter, ladderWriter } from '../words/ladder-writer.ts';
import { layoutVerdictWords, lostLoadsWords } from '../words/layout-verdict.ts';
import { thirdLoadInWords } from '../words/line-load.ts';
import { lineSideInWords } from '../words/line-side.ts';
import { markCells, plusMinusCell, roundCell } from '../words/mark-cells.ts';
import { lineSideRoundInWords, linesToDraw } from '../words/round.ts';
import { sentenceOf } from '../words/sentence.ts';
import { standingMarksInWords } from '../words/standing-marks.ts';
import { shownRows, threeDigits } from '../words/stiffness.ts';
import { worstInWords } from '../words/worst.ts';
import { finishOfWork, finishPart } from './finish-part.ts';
import { judgePart } from './judge-part.ts';
import { linePart } from './line-words.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { powerOfWork, swingPart } from './power-part.ts';
import { realLineOfWork, realLinePart } from './real-line-words.ts';
import { reelLineOfWork, reelLinePart } from './reel-line-part.ts';
import { roundOfWork, roundPart } from './round-part.ts';
import { marksWithSureness, sureness } from './sureness-of-work.ts';
import { surenessPart } from './sureness-words.ts';
import { textTable } from './text-table.ts';
import { turnedPart } from './turned-part.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The report that a builder reads: what this blank is, how even each layout is on it, where the marks go. */
export function reportText(worked: WorkedBuild, build: OpenBuild): string {
  const w = ladderWriter(build.writer, worked.work.question.loads.kg);
  const page: Page = { ...worked, build, w };
  const parts = [heading(page), blankPart(page), stiffnessPart(page), layoutPart(page), strainPart(page)];
  const sure = sureness(worked);
  parts.push(
    surenessPart(worked, sure, w),
    turnedPart(worked, build),
    swingPart(powerOfWork(worked, build), build),
    linePart(worked, w),
    finishPart(finishOfWork(worked), w),
    realLinePart(worked, realLineOfWork(worked), w),
    reelLinePart(worked, reelLineOfWork(worked), w),
    roundPart(worked, roundOfWork(worked), w),
    judgePart(worked, build),
  );
  const marks = sure ? marksWithSureness(worked, sure.marks) : worked.work.marks;
  return `${[...parts, marksPart(page, marks), assumedPart(page), findingsPart(page)].filter((part) => part !== '').join('\n\n')}\n`;
}

interface Page extends WorkedBuild {
  build: OpenBuild;
  w: LadderWriter;
}

function heading({ choices }: Page): string {
  const demo = choices.demo ? ' (demo: an invented scenario)' : '';
  return `${choices.title}${demo}\nTrust your own load test more than this page: nobody has proven it on a real blank yet.`;
}

function blankPart({ work, bench, w }: Page): string {
  const { blank, question, thirdLoadKg } = work;
  const grip = w.length(bench.handle.gripFrontFromButtM);
  const third = thirdLoadKg === undefined ? '' : ` ${thirdLoadInWords(w.load(thirdLoadKg), 'at the grip')}.`;
  return `Blank: ${blank.sections.length} sections, ${w.length(blank.lengthM)} together. Free length ${w.tick(question.rod.lengthM)}; the grip's front is ${grip} from the butt end.${third}`;
}

function stiffnessPart({ work, w }: Page): string {
  const { fitted, tables } = work;
  const rows = shownRows(tables.stiffness);
  const bands = shownRows(fitted?.stiffness ?? []);
  const table = textTable(
    ['from the tip', 'EI N·m²', ...(fitted ? ['95 % band'] : [])],
    rows.map(({ fromTipM, EINm2 }, index) => [
      w.length(fromTipM),
      threeDigits(EINm2),
      ...(fitted ? [`${threeDigits(bands[index].lowNm2)} to ${threeDigits(bands[index].highNm2)}`] : []),
    ]),
  );
  if (!fitted)
    return `Stiffness: a guess from the diameters, good to a factor of two. No drop was read.\n${table}`;
  const unsettled = fitted.reason ? `${sentenceOf(fitted.reason, w)} ` : '';
  return `Stiffness from your readings. ${unsettled}${agreementWords(fitted, w)} ${clampsWords(fitted.tiltRad, w)}\n${table}`;
}

function layoutPart(page: Page): string {
  const { work, choices, w } = page;
  const { best, readings } = work;
  const by = choices.loadBy === 'line' ? 'through the line' : 'tied to the tip, line just taut';
  const judged = criteriaIn(best.limits);
  const limits = judged
    .map(
      ({ id, quantity }) =>
        `${criterionWords[id].name} ${criterionWords[id].figure(best.limits[quantity]!, w)}`,
    )
    .join(', ');
  const named: [string, RuledReading | undefined][] = [
    ['start', readings.start],
    ['proposed', readings.best],
    ['your marks', readings.own],
    [`to ${choices.tapeStep}`, readings.marked],
  ];
  const rows = named.flatMap(([name, reading]) => (reading ? [scoreRow(name, reading, page)] : []));
  return [
    `Loads ${w.loads.join(', ')}, ${by}. Limits: ${limits}.`,
    textTable(['layout', ...judged.map(({ id }) => criterionWords[id].name), 'worst'], rows, [
      'start',
      ...judged.map(() => 'end' as const),
      'start',
    ]),
    [layoutVerdictWords(best.verdict), lostLoadsWords(best)].filter(Boolean).join(' '),
    `What follows is read ${standingMarksInWords(work.standing.are)}.`,
  ].join('\n');
}

function scoreRow(name: string, reading: RuledReading, { w, work }: Page): string[] {
  return [
    name,
    ...criteriaIn(work.best.limits).map(({ id }) => criterionWords[id].figure(reading.worstOf[id].value, w)),
    worstInWords(reading, w) ?? 'nothing to read',
  ];
}

/** The caution of the load test stands with the strain it is about. */
function strainPart({ work, bench, w }: Page): string {
  const levels = strainLevels(bench);
  const words = { within: '', caution: ' (only computed)', stop: ' (only computed, past stop)' };
  const loads = work.readings.standing.loads.map(
    ({ strain }, index) =>
      `${w.loads[index]} ${fixedDecimals(strain.percent, 2)} %${words[strainVerdict(strain.percent, levels)]}`,
  );
  const whose = levels.own
    ? 'your own levels'
    : `our judgement for ${bench.material === 'unknown' ? 'an unknown material' : choiceText(buildSchema.blank.fields.material, bench.material)}; no promise that it holds`;
  return [
    `Largest surface strain: ${loads.join(', ')}. Caution from ${levels.cautionPercent} %, stop at ${levels.stopPercent} % (${whose}).`,
    'Load test: wear eye protection. Nobody stands in the plane of the rod. Raise the load slowly, weights low over the floor. Wrap or bind sleeve ferrules first.',
  ].join('\n');
}

function marksPart({ work }: Page, marks: MarksList): string {
  const on = (lengthM: number) => formatOnTape(lengthM, marks.tapeStep);
  const round = marks.sections.some(({ rows }) => rows.some((row) => row.round !== undefined));
  const sure = marks.sections.some(({ rows }) => rows.some(({ plusMinusM }) => plusMinusM !== undefined));
  const tables = marks.sections.map((section) => {
    const side = section.lineSide
      ? `; line side ${lineSideInWords(section.lineSide)}${lineSideRoundInWords(section, marks.tapeStep)}`
      : '';
    const title = `${section.name}, ${on(section.lengthM)} long${side}`;
    if (section.rows.length === 0) return `${title}: no guide on it`;
    const rows = section.rows.map((row) => [
      ...markCells(row, marks.tapeStep),
      ...(round ? [roundCell(row, marks.tapeStep)] : []),
      ...(sure ? [plusMinusCell(row, marks.tapeStep)] : []),
    ]);
    const heads = [
      'guide',
      'kind',
      'from tip end',
      'from butt end',
      'station',
      'interval',
      'may move',
      ...(round ? ['round, from the top'] : []),
      ...(sure ? ['best place ±'] : []),
    ];
    return `${title}\n${textTable(
      heads,
      rows,
      heads.map((_, column) => (column === 1 ? 'start' : 'end')),
    )}`;
  });
  const whose = work.marksAre === 'own' ? 'Your marks' : 'Proposed marks';
  const datum = 'Measure from the blank’s tip (the ring end of the tip-top’s tube) to the middle of the ring';
  return `${whose} to ${marks.tapeStep}. ${datum}.${round ? ` ${linesToDraw}` : ''}\n${tables.join('\n')}`;
}

function assumedPart({ build, w }: Page): string {
  if (build.assumed.length === 0) return '';
  return `Filled in from common practice: ${build.assumed.map((one) => sentenceOf(one, w)).join('; ')}.`;
}

function findingsPart({ build, work }: Page): string {
  const findings = [...build.findings, ...work.findings];
  return findings.length === 0 ? '' : `Look at these:\n${findingLines(findings, build.writer)}`;
}
