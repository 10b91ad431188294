import type { AssembledBlank, Zone } from '../engine/bench/assemble.ts';
import type { MarksList, SectionMarks } from '../engine/marks/marks-list.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { lyingPaper, marginMm, type PaperName } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { drawTile, type StripZone, stripTiles, tileHeightMm } from './strip.ts';

export interface StripsOptions {
  paper: PaperName;
  factors?: PrintFactors;
  /** Build, revision and date; goes on every page. */
  stamp: string;
}

/** The strips of every section, page after page, each with its check rules. */
export function stripsSheet(
  blank: AssembledBlank,
  list: MarksList,
  keepOut: readonly Zone[],
  options: StripsOptions,
): Sheet {
  const size = lyingPaper[options.paper];
  const roomMm = size.widthMm - 2 * marginMm - rulesRoomMm.side;
  const tiles = list.sections.flatMap((section, index) =>
    stripTiles({ section, tapeStep: list.tapeStep, zones: zonesOn(blank, section, index, keepOut) }, roomMm),
  );
  const perPage = Math.floor((size.heightMm - 2 * marginMm - headMm - rulesRoomMm.foot) / tileHeightMm);
  const count = Math.ceil(tiles.length / perPage);
  const pages = Array.from({ length: count }, (_, index): Page => {
    const onPage = tiles.slice(index * perPage, (index + 1) * perPage);
    const marks = [
      ...head(`${options.stamp} · page ${index + 1} of ${count}`, list, options.factors),
      ...onPage.flatMap((tile, row) => drawTile(tile, marginMm, marginMm + headMm + row * tileHeightMm)),
      ...checkRules(size),
    ];
    return correctPage({ ...size, marks }, options.factors ?? truePrint);
  });
  return { title: 'Strips', pages };
}
const headMm = 11;

function head(stamp: string, list: MarksList, factors: PrintFactors = truePrint): Mark[] {
  const corrected = factors.across === 1 && factors.along === 1 ? '' : ` · ${correctionWords(factors)}`;
  const how =
    'Lay the lower edge along the section, tip end on its tip-side end. Tall ticks: guide number, distance from the section’s tip end / from its butt end. Tape strips line on line at the joins.';
  return [
    text(marginMm, marginMm + 2.6, `${stamp}${corrected}`, { sizeMm: 3, bold: true }),
    text(marginMm, marginMm + 7, how, { sizeMm: 2.5 }),
    text(marginMm, marginMm + 10.2, `Marks to ${list.tapeStep}; stations count from the blank’s tip.`, {
      sizeMm: 2.5,
    }),
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
