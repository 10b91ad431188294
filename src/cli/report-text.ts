import { strainLevels, strainVerdict } from '../engine/bench/strain.ts';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import type { MarksList } from '../engine/marks/marks-list.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatDegrees, formatGrams, formatLength, formatMm } from '../engine/units/format-quantity.ts';
import { formatOnTape } from '../engine/units/tape-step.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import { plusMinusOnTape } from '../sheets/marks-sheet.ts';
import { lineSideInWords } from '../words/line-side.ts';
import { worstInWords } from '../words/worst.ts';
import { finishOfWork, finishPart } from './finish-words.ts';
import { judgePart } from './judge-part.ts';
import { linePart } from './line-words.ts';
import { findingLines, type OpenBuild } from './open-build.ts';
import { powerOfWork, swingPart } from './power-part.ts';
import { realLineOfWork, realLinePart } from './real-line-words.ts';
import { marksWithSureness, sureness } from './sureness-of-work.ts';
import { surenessPart } from './sureness-words.ts';
import { textTable } from './text-table.ts';
import { turnedPart } from './turned-part.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The report that a builder reads: what this blank is, how even each layout is on it, where the marks go. */
export function reportText(worked: WorkedBuild, build: OpenBuild): string {
  const system: UnitSystem = worked.choices.tapeStep === '1 mm' ? 'mm' : 'inch';
  const page: Page = {
    ...worked,
    build,
    length: (lengthM) => formatLength(lengthM, { system, decimals: 0 }),
    system,
  };
  const parts = [heading(page), blankPart(page), stiffnessPart(page), layoutPart(page), strainPart(page)];
  const sure = sureness(worked);
  parts.push(
    surenessPart(worked, sure),
    turnedPart(worked, build),
    swingPart(powerOfWork(worked, build), build),
    linePart(worked),
    finishPart(finishOfWork(worked)),
    realLinePart(worked, realLineOfWork(worked)),
    judgePart(worked, build, page.length),
  );
  const marks = sure ? marksWithSureness(worked, sure.marks) : worked.work.marks;
  return `${[...parts, marksPart(page, marks), assumedPart(page), findingsPart(page)].filter((part) => part !== '').join('\n\n')}\n`;
}

interface Page extends WorkedBuild {
  build: OpenBuild;
  system: UnitSystem;
  length: (lengthM: number) => string;
}

function heading({ choices }: Page): string {
  const demo = choices.demo ? ' (demo: an invented scenario)' : '';
  return `${choices.title}${demo}\nNot yet proven on a real blank: trust your own load test more than this page.`;
}

function blankPart({ work, bench, length }: Page): string {
  const { blank, question, thirdLoadKg } = work;
  const grip = length(bench.handle.gripFrontFromButtM);
  const third =
    thirdLoadKg === undefined
      ? ''
      : ` ${formatGrams(thirdLoadKg, 0)} at the tip drop it by a third of the free length.`;
  return `Blank: ${blank.sections.length} sections, ${length(blank.lengthM)} together. Free length ${length(question.rod.lengthM)}, the grip's front ${grip} from the butt end.${third}`;
}

function stiffnessPart({ work, length }: Page): string {
  const { fitted, tables } = work;
  const every = Math.max(1, Math.floor(tables.stiffness.length / 10));
  const rows = tables.stiffness.filter((_, index) => index % every === 0);
  const band = (index: number) => fitted?.stiffness[index * every];
  const table = textTable(
    ['from the tip', 'EI N·m²', ...(fitted ? ['95 % band'] : [])],
    rows.map(({ fromTipM, EINm2 }, index) => [
      length(fromTipM),
      threeDigits(EINm2),
      ...(fitted
        ? [`${threeDigits(band(index)?.lowNm2 ?? 0)} to ${threeDigits(band(index)?.highNm2 ?? 0)}`]
        : []),
    ]),
  );
  if (!fitted)
    return `Stiffness, a guess from the diameters, good to a factor of two (no drop was read):\n${table}`;
  const tilts = fitted.tiltRad.map((tilt) => formatDegrees(tilt, 2)).join(', ');
  const status = fitted.status === 'converged' ? '' : ` (${fitted.reason})`;
  return `Stiffness from the readings${status}; they scatter by ${formatMm(fitted.residualRmsM)}, the clamps stood off by ${tilts}:\n${table}`;
}

function layoutPart(page: Page): string {
  const { work, choices } = page;
  const { best, readings, question } = work;
  const by = choices.loadBy === 'line' ? 'through the line' : 'tied to the tip, line just taut';
  const loads = question.loads.kg.map((load) => formatGrams(load, 0)).join(', ');
  const { lineAngleRad, gapM, extraBendPerM } = best.limits;
  const limits = `line angle ${formatDegrees(lineAngleRad)}, gap ${formatMm(gapM)}, extra bend ${fixedDecimals(extraBendPerM, 3)} 1/m`;
  const named: [string, RuledReading | undefined][] = [
    ['start', readings.start],
    ['proposed', readings.best],
    ['your marks', readings.own],
    [`to ${choices.tapeStep}`, readings.marked],
  ];
  const rows = named.flatMap(([name, reading]) => (reading ? [scoreRow(name, reading, page)] : []));
  return [
    `Loads ${loads}, ${by}. Limits: ${limits}.`,
    textTable(['layout', 'line angle', 'gap', 'extra bend', 'worst'], rows, [
      'start',
      'end',
      'end',
      'end',
      'start',
    ]),
    `${best.verdict.text[0].toUpperCase()}${best.verdict.text.slice(1)}.`,
  ].join('\n');
}

function scoreRow(name: string, reading: RuledReading, { work, system }: Page): string[] {
  const { lineAngle, gap, extraBend } = reading.worstOf;
  const byRule = (lengthM: number) => formatLength(lengthM, { system, denominator: 32, decimals: 1 });
  const worst = worstInWords(reading, { gap: byRule, loadsKg: work.question.loads.kg });
  return [
    name,
    formatDegrees(lineAngle.value),
    formatMm(gap.value),
    `${fixedDecimals(extraBend.value, 3)} 1/m`,
    worst ?? 'nothing to read',
  ];
}

/** The caution of the load test stands with the strain it is about. */
function strainPart({ work, bench }: Page): string {
  const levels = strainLevels(bench);
  const reading = work.readings.own ?? work.readings.best;
  const words = { within: '', caution: ' (caution)', stop: ' (stop)' };
  const loads = reading.loads.map(
    ({ strain }, index) =>
      `${formatGrams(work.question.loads.kg[index], 0)} ${fixedDecimals(strain.percent, 2)} %${words[strainVerdict(strain.percent, levels)]}`,
  );
  const whose = levels.own
    ? 'your own levels'
    : `a judgement for ${bench.material === 'unknown' ? 'an unknown material' : bench.material}, no promise that it holds`;
  return [
    `Largest surface strain: ${loads.join(', ')}. Caution from ${levels.cautionPercent} %, stop at ${levels.stopPercent} % (${whose}).`,
    'Load test: eye protection on, nobody in the plane of the rod, load raised slowly, weights low over the floor, sleeve ferrules wrapped or bound.',
  ].join('\n');
}

function marksPart({ work }: Page, marks: MarksList): string {
  const on = (lengthM: number) => formatOnTape(lengthM, marks.tapeStep);
  const sure = marks.sections.some(({ rows }) => rows.some(({ plusMinusM }) => plusMinusM !== undefined));
  const tables = marks.sections.map((section) => {
    const side = section.lineSide ? `; line side ${lineSideInWords(section.lineSide)}` : '';
    const title = `${section.name}, ${on(section.lengthM)} long${side}`;
    if (section.rows.length === 0) return `${title}: no guide on it`;
    const rows = section.rows.map((row) => [
      `${row.guide}`,
      row.name,
      on(row.fromOwnTipM),
      on(row.fromOwnButtM),
      on(row.fromTipM),
      on(row.intervalM),
      row.slack ? `-${formatMm(row.slack.towardsTipM, 0)} +${formatMm(row.slack.towardsButtM, 0)}` : '',
      ...(sure ? [row.plusMinusM === undefined ? '' : plusMinusOnTape(row.plusMinusM, marks.tapeStep)] : []),
    ]);
    const heads = [
      'guide',
      'kind',
      'from tip end',
      'from butt end',
      'station',
      'interval',
      'may move',
      ...(sure ? ['best place ±'] : []),
    ];
    return `${title}\n${textTable(
      heads,
      rows,
      heads.map((_, column) => (column === 1 ? 'start' : 'end')),
    )}`;
  });
  const whose = work.marksAre === 'own' ? 'Your marks' : 'Proposed marks';
  const datum =
    'stations count from the blank’s tip, the ring end of the tip-top’s tube, to the middle of the ring';
  return `${whose} to ${marks.tapeStep}; ${datum}.\n${tables.join('\n')}`;
}

function assumedPart({ build }: Page): string {
  if (build.assumed.length === 0) return '';
  return `Filled in from common practice: ${build.assumed.map(({ words }) => words).join('; ')}.`;
}

function findingsPart({ build, work }: Page): string {
  const findings = [...build.findings, ...work.findings];
  return findings.length === 0 ? '' : `Look at these:\n${findingLines(findings, build.writer)}`;
}

function threeDigits(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
