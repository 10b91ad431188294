import type { AssembledBlank, Zone } from '../engine/bench/assemble.ts';
import type { MarksList, SectionMarks } from '../engine/marks/marks-list.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { type Block, flowBlocks } from './page-flow.ts';
import { longSheets, marginMm, type PaperSize, type StripsOn, usualRollM } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { drawPiece, pieceHeightMm } from './strip.ts';
import { type Strip, type StripPiece, type StripZone, stripPieces } from './strip-pieces.ts';
import { shortWords } from './text-width.ts';

export interface StripsOptions extends StripsOn {
  factors?: PrintFactors;
  /** Build, revision and date; goes on every page. */
  stamp: string;
}

/** The strips of every section that has a mark, page after page, each page with its check rules. */
export function stripsSheet(
  blank: AssembledBlank,
  list: MarksList,
  keepOut: readonly Zone[],
  options: StripsOptions,
): Sheet {
  const pieces = stripsOf(blank, list, keepOut).flatMap((strip) => piecesOn(strip, options));
  const size = pageSize(options, pieces);
  const pages = flowBlocks(pieces.map(blockOf), {
    topMm: marginMm + headMm + (roundWords(list).length > 0 ? 3.4 : 0),
    bottomMm: size.heightMm - marginMm - rulesRoomMm.foot,
    gapMm: apartMm,
  });
  return {
    title: 'Strips',
    pages: pages.map((drawn, index): Page => {
      const stamp = `${options.stamp} · page ${index + 1} of ${pages.length}`;
      const marks = [...head(stamp, list, options.factors), ...drawn, ...checkRules(size)];
      return correctPage({ ...size, marks }, options.factors ?? truePrint);
    }),
  };
}

/** What is marked on each section, and where no guide may stand. */
export function stripsOf(blank: AssembledBlank, list: MarksList, keepOut: readonly Zone[]): Strip[] {
  return list.sections.map((section, index) => ({
    section,
    tapeStep: list.tapeStep,
    zones: zonesOn(blank, section, index, keepOut),
  }));
}

/** The pieces of one section on this paper. */
export function piecesOn(strip: Strip, on: StripsOn): StripPiece[] {
  return stripPieces(strip, longestPageMm(on) - besideStripMm);
}

const headMm = 14;
/** From the words below one strip to the title of the next: a title belongs to what stands under it. */
const apartMm = 5.2;
const besideStripMm = 2 * marginMm + rulesRoomMm.side;

function longestPageMm({ paper, roll }: StripsOn): number {
  if (paper !== 'roll') return longSheets[paper].widthMm;
  return roll?.lengthM === undefined ? Infinity : roll.lengthM * 1000;
}

/** A roll is cut where its longest piece ends; the rules at its foot need their own room. */
function pageSize({ paper, roll }: StripsOn, pieces: readonly StripPiece[]): PaperSize {
  if (paper !== 'roll') return longSheets[paper];
  const longestMm = Math.max(120, ...pieces.map(({ startMm, endMm }) => endMm - startMm + labelPastEndMm));
  return {
    widthMm: Math.min(longestPageMm({ paper, roll }), longestMm + besideStripMm),
    heightMm: (roll?.widthM ?? usualRollM) * 1000,
  };
}
/** A label by the butt end runs past it. */
const labelPastEndMm = 40;

function blockOf(piece: StripPiece): Block {
  return { heightMm: pieceHeightMm(piece), draw: (topMm) => drawPiece(piece, marginMm, topMm) };
}

function head(stamp: string, list: MarksList, factors: PrintFactors = truePrint): Mark[] {
  const corrected = factors.across === 1 && factors.along === 1 ? '' : ` · ${correctionWords(factors)}`;
  const bare = list.sections.filter(({ rows }) => rows.length === 0).map(({ name }) => name);
  const none = bare.length > 0 ? ` No guide, so no strip: ${shortWords(bare.join(', '), 60)}.` : '';
  const lines = [
    'Lay the lower edge along the section, the heavy line on the section’s own tip end or butt end. Tape strips line on line at a join.',
    `Tall ticks: guide number, distance from the section’s tip end / from its butt end. Marks to ${list.tapeStep}.${none}`,
    ...roundWords(list),
  ];
  return [
    text(marginMm, marginMm + 2.6, `${stamp}${corrected}`, { sizeMm: 3, bold: true }),
    ...lines.map((words, i) => text(marginMm, marginMm + 7 + i * 3.4, words, { sizeMm: 2.5 })),
  ];
}

/** Wrapped round the blank, a strip shows each foot's place on it. */
function roundWords(list: MarksList): string[] {
  const by = list.sections.flatMap(({ rows }) => rows.flatMap(({ round }) => round?.by ?? []))[0];
  if (!by) return [];
  const edge = by === 'right' ? 'top line' : 'line under the blank';
  return [
    `Guides round the blank: lay the edge on the ${edge} and wrap the strip round. Each foot’s middle is at its short bar.`,
  ];
}

function correctionWords({ across, along }: PrintFactors): string {
  const percent = (factor: number) =>
    `${factor >= 1 ? '+' : '-'}${Math.abs((factor - 1) * 100).toFixed(2)} %`;
  return `corrected for this printer: across ${percent(across)}, along ${percent(along)}`;
}

/** What lies under a ferrule on this section, and what is kept free of guides on the rest of it. */
function zonesOn(
  blank: AssembledBlank,
  section: SectionMarks,
  index: number,
  keepOut: readonly Zone[],
): StripZone[] {
  const { visible } = blank.sections[index];
  const own = (zone: Zone, words: string): StripZone => ({
    fromOwnTipM: Math.max(0, zone.fromTipM - section.fromTipM),
    toOwnTipM: Math.min(section.lengthM, zone.toTipM - section.fromTipM),
    words,
  });
  const hidden = [
    own({ fromTipM: section.fromTipM, toTipM: visible.fromTipM }, 'inside the ferrule'),
    own({ fromTipM: visible.toTipM, toTipM: section.toTipM }, 'inside the ferrule'),
  ];
  const free = keepOut.map((zone) =>
    own(
      { fromTipM: Math.max(zone.fromTipM, visible.fromTipM), toTipM: Math.min(zone.toTipM, visible.toTipM) },
      'no guide here',
    ),
  );
  return [...hidden, ...free].filter(({ fromOwnTipM, toOwnTipM }) => toOwnTipM - fromOwnTipM > 1e-6);
}
