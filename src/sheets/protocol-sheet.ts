import type { Protocol, ProtocolLoad, ProtocolSetup } from '../engine/bench/protocol.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { type Block, flowBlocks } from './page-flow.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';

/** A set-up by the name it has on the screen, which the builder may change. */
interface NamedSetup extends Omit<ProtocolSetup, 'stand'> {
  name: string;
}
export interface NamedProtocol extends Omit<Protocol, 'setups'> {
  setups: NamedSetup[];
}

export interface ProtocolSheetOptions {
  paper: PaperName;
  stamp: string;
  tapeStep: TapeStep;
  /** Why it has fewer readings than usual, and what then to look out for. */
  shorter?: string;
}

/** The measuring protocol of one blank with boxes to fill in. */
export function protocolSheet(protocol: NamedProtocol, options: ProtocolSheetOptions): Sheet {
  const size = standingPaper[options.paper];
  const pages = flowBlocks(
    protocol.setups.map((setup, index) => setupBlock(setup, index, options.tapeStep)),
    {
      topMm: marginMm + headMm + (options.shorter ? lineMm : 0),
      bottomMm: size.heightMm - marginMm - rulesRoomMm.foot,
      gapMm: 4,
    },
  );
  return {
    title: 'Measuring protocol',
    pages: pages.map((marks, index): Page => {
      const stamp = `${options.stamp} · measuring protocol, ${protocol.readingCount} readings · page ${index + 1} of ${pages.length}`;
      return {
        ...size,
        marks: [...head(stamp, protocol.thirdLoadKg, options.shorter), ...marks, ...checkRules(size)],
      };
    }),
  };
}

const headMm = 40.2;
const lineMm = 4.2;
/** What spoils readings most, and what can hurt; common practice, no source. */
const advice = [
  'Level the blank at the clamp by eye; the program corrects the rest. Do not touch the clamp inside a set-up.',
  'Line of reference: through the middle of the blank where it leaves the clamp, level. Drop: from that line down to the blank.',
  'Read the same edge of the blank everywhere, at the clamp too, and say which. Wait until the tip is still (10 to 20 s). Seat every ferrule to its line.',
  'Measure every flag twice, from the tip and from the clamp. A 1 in mistake here does not show in the drops.',
  'Wear eye protection. Stand out of the blank’s plane. Add weight slowly, low over the floor.',
  'If the tip drops far more than the sheet says, take the weight off and hang less.',
];

function head(stamp: string, thirdLoadKg: number, shorter: string | undefined): Mark[] {
  const bound = `Before you hang more than about ${formatGrams(thirdLoadKg, 0)} on the whole blank, wrap or tightly bind sleeve ferrules.`;
  return [
    text(marginMm, marginMm + 3, stamp, { bold: true, sizeMm: 3.2 }),
    ...[...advice, bound, ...(shorter ? [shorter] : [])].map((words, k) =>
      text(marginMm, marginMm + 8.5 + k * lineMm, words, { sizeMm: 2.6, bold: words === shorter }),
    ),
  ];
}

const columns: Column[] = [
  { title: 'hang at the tip', widthMm: 30, align: 'end' },
  { title: 'read at, from the tip', widthMm: 38, align: 'end' },
  { title: 'tip should drop about', widthMm: 38, align: 'end' },
  { title: 'drop', widthMm: 32 },
  { title: 'note', widthMm: 28 },
];

function setupBlock(setup: NamedSetup, index: number, step: TapeStep): Block {
  const rows = setup.loads.flatMap((load) =>
    placesOf(load, step).map((place, k) => [
      k === 0 ? weightWords(load.massKg) : '',
      place,
      k === 0 ? formatOnTape(load.expectedTipDropM, step) : '',
      '',
      k === 0 && load.repeat ? 'again' : '',
    ]),
  );
  const title = `${index + 1}. ${setup.name}: clamp edge ${formatOnTape(setup.clampFromTipM, step)} from the tip, at least ${formatOnTape(setup.clampHeightNeededM, step)} above the floor`;
  return {
    heightMm: 6 + tableHeightMm({ rows }),
    draw: (topMm: number): Mark[] => [
      text(marginMm, topMm + 4, title, { bold: true }),
      ...drawTable({ columns, rows }, marginMm, topMm + 6),
    ],
  };
}

function placesOf({ readFromTipM, readAtClamp }: ProtocolLoad, step: TapeStep): string[] {
  const flags = readFromTipM.map((flag) => (flag === 0 ? 'tip' : formatOnTape(flag, step)));
  return readAtClamp ? [...flags, 'at the clamp'] : flags;
}

function weightWords(massKg: number): string {
  return massKg === 0 ? 'nothing' : formatGrams(massKg);
}
