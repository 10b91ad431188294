/**
 * A section's strip, cut into the fewest pieces of paper that reach every mark. A piece starts at one of the
 * section's own ends or is taped to one that does, so each mark is reached from the tip end or from the butt end,
 * whichever takes less paper; what lies between needs none, and a section without a mark gets no strip.
 */

import type { MarkRow, SectionMarks } from '../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep, tapeDenominator } from '../engine/units/tape-step.ts';
import { markRoundInWords } from '../words/round.ts';
import { textPieces } from './drawing.ts';
import { laneDefaults } from './label-lanes.ts';
import { textWidthMm } from './text-width.ts';

/** Distances along the section from its own tip-side end. */
export interface StripZone {
  fromOwnTipM: number;
  toOwnTipM: number;
  words: string;
}
export interface Strip {
  section: SectionMarks;
  tapeStep: TapeStep;
  /** Hidden in a ferrule, or kept free of guides. */
  zones: readonly StripZone[];
}
/** Distances along the section from its own tip-side end. */
export interface StripPiece {
  strip: Strip;
  /** Counted from 0 at the tip end; with the whole number of them. */
  index: number;
  count: number;
  startMm: number;
  endMm: number;
  /** Where it is taped to the piece before it and after it, line on line. */
  joinBeforeMm?: number;
  joinAfterMm?: number;
}

/** On either side of a join: room to tape, and for a label begun before the join. */
export const besideJoinMm = 15;
export const labelSizeMm = 2.6;
/** Paper before the first mark of a piece that does not start at the tip end. */
const beforeMarkMm = 6;

type Span = Pick<StripPiece, 'startMm' | 'endMm' | 'joinBeforeMm' | 'joinAfterMm'>;

/** The pieces of a section on paper that takes `roomMm` of strip; none where it has no mark. */
export function stripPieces(strip: Strip, roomMm: number): StripPiece[] {
  const spans = fewest(waysToReach(strip, roomMm));
  return spans.map((span, index) => ({ strip, index, count: spans.length, ...span }));
}

/** Guide number and its distances from the section's two ends. */
export function markLabel({ guide, fromOwnTipM, fromOwnButtM, round }: MarkRow, step: TapeStep) {
  const ends = `${guide}: ${formatOnTape(fromOwnTipM, step)} / ${formatOnTape(fromOwnButtM, step)}`;
  return textPieces(round ? `${ends}, ${markRoundInWords(round, step)}` : ends);
}

/** The first marks from the tip end and the rest from the butt end, for every place to part them. */
function waysToReach(strip: Strip, roomMm: number): Span[][] {
  const { rows, lengthM } = strip.section;
  const lengthMm = lengthM * 1000;
  const ends = rows.map((row) => labelEndMm(row, strip.tapeStep));
  const overMm = Math.max(0, ...ends.map((end) => end - lengthMm));
  if (rows.length === 0) return [];
  if (lengthMm + overMm <= roomMm) return [[{ startMm: 0, endMm: lengthMm }]];
  return Array.from({ length: rows.length + 1 }, (_, parted) => {
    const farthestMm = Math.max(0, ...ends.slice(0, parted));
    const nearestMm = Math.min(lengthMm, ...rows.slice(parted).map((row) => row.fromOwnTipM * 1000));
    const cut = { roomMm, lengthMm, overMm, unitMm: joinUnitMm(strip.tapeStep) };
    return [
      ...(parted > 0 ? fromTipEnd(farthestMm, cut) : []),
      ...(parted < rows.length ? fromButtEnd(nearestMm - beforeMarkMm, cut) : []),
    ];
  });
}

interface Cut {
  roomMm: number;
  lengthMm: number;
  /** What a label runs past the butt end. */
  overMm: number;
  /** Joins stand at whole multiples of it. */
  unitMm: number;
}

function fromTipEnd(farthestMm: number, { roomMm, lengthMm, overMm, unitMm }: Cut): Span[] {
  const spans: Span[] = [];
  for (let startMm = 0, join: number | undefined; ; ) {
    if (startMm + roomMm >= Math.min(farthestMm, lengthMm + overMm)) {
      const endMm = Math.min(lengthMm, up(farthestMm, unitMm), startMm + roomMm);
      return [...spans, { startMm, endMm, joinBeforeMm: join }];
    }
    const next = down(startMm + roomMm - besideJoinMm, unitMm);
    spans.push({ startMm, endMm: next + besideJoinMm, joinBeforeMm: join, joinAfterMm: next });
    [startMm, join] = [next - besideJoinMm, next];
  }
}

function fromButtEnd(nearestMm: number, { roomMm, lengthMm, overMm, unitMm }: Cut): Span[] {
  const spans: Span[] = [];
  for (let endMm = lengthMm, room = roomMm - overMm, join: number | undefined; ; room = roomMm) {
    if (endMm - room <= nearestMm) {
      const startMm = Math.max(0, endMm - room, down(nearestMm, unitMm));
      return [{ startMm, endMm, joinAfterMm: join }, ...spans];
    }
    const next = up(endMm - room + besideJoinMm, unitMm);
    spans.unshift({ startMm: next - besideJoinMm, endMm, joinBeforeMm: next, joinAfterMm: join });
    [endMm, join] = [next + besideJoinMm, next];
  }
}

/** Fewest pieces, then fewest joins, then the most marks reached from the tip end. */
function fewest(ways: Span[][]): Span[] {
  const joins = (spans: Span[]) => spans.filter(({ joinAfterMm }) => joinAfterMm !== undefined).length;
  const cost = (spans: Span[]) => spans.length + joins(spans) / 1000;
  return ways.reduceRight<Span[]>(
    (best, way) => (best.length === 0 || cost(way) < cost(best) ? way : best),
    [],
  );
}

/** A label stands to the right of its tick. */
function labelEndMm(row: MarkRow, step: TapeStep): number {
  return (
    row.fromOwnTipM * 1000 + laneDefaults.besideTickMm + textWidthMm(markLabel(row, step), labelSizeMm) + 1
  );
}

/** Full centimetres, or half inches in a shop that marks in inches. */
function joinUnitMm(step: TapeStep): number {
  return tapeDenominator(step) === undefined ? 10 : 12.7;
}

function up(mm: number, unitMm: number): number {
  return Math.ceil(mm / unitMm - 1e-9) * unitMm;
}

function down(mm: number, unitMm: number): number {
  return Math.floor(mm / unitMm + 1e-9) * unitMm;
}
