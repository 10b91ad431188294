/**
 * A piece of a section's strip at true size. Its lower edge is laid on the blank: ticks and divisions stand on it,
 * distances count from the section's own tip-side end, and every piece restates them, so that errors of joining do
 * not add up.
 */

import type { MarkRound, MarkRow } from '../engine/marks/marks-list.ts';
import { formatOnTape, tapeDenominator } from '../engine/units/tape-step.ts';
import { lineSideInWords } from '../words/line-side.ts';
import { line, type Mark, text, textPieces } from './drawing.ts';
import { laneDefaults, placeInLanes } from './label-lanes.ts';
import { besideJoinMm, labelSizeMm, markLabel, type StripPiece } from './strip-pieces.ts';
import { shortWords, textWidthMm } from './text-width.ts';

const titleMm = 3;
const laneMm = 3.6;
const bodyMm = 11;
const footMm = 3.6;

/** Title, as many lanes as its labels take, the strip itself, and the words below its edge. */
export function pieceHeightMm(piece: StripPiece): number {
  return titleMm + laneMm * laneCount(piece) + 3 + bodyMm + footMm;
}

/** The piece with its top left corner at the given place. */
export function drawPiece(piece: StripPiece, leftMm: number, topMm: number): Mark[] {
  const at = (alongMm: number) => leftMm + alongMm - piece.startMm;
  const edgeMm = topMm + pieceHeightMm(piece) - footMm;
  const frame: Frame = { piece, at, topMm, bodyTopMm: edgeMm - bodyMm, edgeMm };
  return [
    ...heading(frame, leftMm),
    ...outline(frame),
    ...divisions(frame),
    ...zones(frame),
    ...ticks(frame),
    ...joins(frame),
  ];
}

interface Frame {
  piece: StripPiece;
  at: (alongMm: number) => number;
  topMm: number;
  bodyTopMm: number;
  edgeMm: number;
}

function heading({ piece, topMm }: Frame, leftMm: number): Mark[] {
  const { section, tapeStep } = piece.strip;
  const side = section.lineSide ? ` · line side ${shortWords(lineSideInWords(section.lineSide), 60)}` : '';
  const from = atTipEnd(piece) ? 'tip end' : formatOnTape(piece.startMm / 1000, tapeStep);
  const to = atButtEnd(piece) ? 'butt end' : formatOnTape(piece.endMm / 1000, tapeStep);
  const words = `${section.name}, strip ${piece.index + 1} of ${piece.count}: ${from} to ${to}${side}`;
  return [text(leftMm, topMm + titleMm, words, { sizeMm: 2.8, bold: true })];
}

function atTipEnd({ startMm }: StripPiece): boolean {
  return startMm === 0;
}

function atButtEnd({ strip, endMm }: StripPiece): boolean {
  return endMm === strip.section.lengthM * 1000;
}

function outline({ piece, at, bodyTopMm: top, edgeMm: y }: Frame): Mark[] {
  const [left, right] = [at(piece.startMm), at(piece.endMm)];
  const side = (isEnd: boolean, name: string) =>
    isEnd ? ({ widthMm: 0.5, name } as const) : ({ widthMm: 0.1, ink: 'grey' } as const);
  return [
    line(left, y, right, y, { widthMm: 0.3, name: 'edge to lay on the blank' }),
    line(left, top, right, top, { widthMm: 0.1, ink: 'grey' }),
    line(left, top, left, y, side(atTipEnd(piece), 'tip end')),
    line(right, top, right, y, side(atButtEnd(piece), 'butt end')),
    ...(atTipEnd(piece) ? [endWord(left + 1, y, 'tip end', 'start')] : []),
    ...(atButtEnd(piece) ? [endWord(right - 1, y, 'butt end', 'end')] : []),
  ];
}

function endWord(xMm: number, edgeYMm: number, words: string, align: 'start' | 'end'): Mark {
  return text(xMm, edgeYMm + 2.6, words, { sizeMm: 2.4, align });
}

/** Millimetres numbered every 10, or sixteenths or finer numbered every inch. */
function divisions({ piece, at, edgeMm: y }: Frame): Mark[] {
  const denominator = tapeDenominator(piece.strip.tapeStep);
  const perUnit = denominator === undefined ? 10 : Math.min(16, denominator);
  const stepMm = denominator === undefined ? 1 : 25.4 / perUnit;
  const first = Math.ceil(piece.startMm / stepMm - 1e-9);
  const last = Math.floor(piece.endMm / stepMm + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k).flatMap((count) => {
    const x = at(count * stepMm);
    const heightMm = divisionHeight(count % perUnit, perUnit);
    const short = line(x, y, x, y - heightMm, { widthMm: 0.12 });
    const number = denominator === undefined ? count : count / perUnit;
    const roomRight =
      at(piece.endMm) - x > 4 && joinPlaces(piece).every((join) => Math.abs(at(join) - x - 2) > 3);
    if (count % perUnit !== 0 || !roomRight) return [short];
    return [short, text(x + 0.4, y - 3.4, `${number}`, { sizeMm: 2.2, ink: 'grey' })];
  });
}

function divisionHeight(inUnit: number, perUnit: number): number {
  if (inUnit === 0) return 3;
  return inUnit === perUnit / 2 ? 2.2 : 1.4;
}

function zones({ piece, at, bodyTopMm }: Frame): Mark[] {
  return piece.strip.zones.flatMap((zone) => {
    const from = Math.max(piece.startMm, zone.fromOwnTipM * 1000);
    const to = Math.min(piece.endMm, zone.toOwnTipM * 1000);
    if (to <= from) return [];
    const y = bodyTopMm + 1.2;
    const words = textPieces(zone.words);
    const fits = textWidthMm(words, 2.2) + 1 <= to - from;
    return [
      { kind: 'area', xMm: at(from), yMm: y - 0.6, widthMm: to - from, heightMm: 1.2, ink: 'grey' } as const,
      ...(fits ? [text(at(from) + 0.8, y + 3, words, { sizeMm: 2.2, ink: 'grey' })] : []),
    ];
  });
}

/** Guide marks: the tick stands on the edge; one whose label is on the next piece carries only its number. */
function ticks({ piece, at, bodyTopMm, edgeMm: y }: Frame): Mark[] {
  const { labels, places, lanes } = placeLabels(piece);
  return marksOn(piece).flatMap((row, k) => {
    const x = at(row.fromOwnTipM * 1000);
    const laneYMm = bodyTopMm - 2 - laneMm * (lanes - 1 - places[k].lane);
    return [
      line(x, y, x, laneYMm - 1.6, { widthMm: 0.3, ink: 'attention', name: `guide ${row.guide}` }),
      text(at(places[k].leftMm), laneYMm, labels[k], { sizeMm: labelSizeMm }),
      ...(row.round ? footBar(row.guide, x, y, row.round) : []),
    ];
  });
}

/**
 * Where the foot's middle comes to lie once the strip is wrapped round the blank, its lower edge on the top line for a
 * spiral to the right and on the line under for one to the left: either way it wraps away from who reads it.
 */
function footBar(guide: number, xMm: number, edgeYMm: number, round: MarkRound): Mark[] {
  const upMm = 1000 * (round.by === 'right' ? round.fromTopLineM : round.fromUnderLineM);
  if (upMm < 0.25) return [];
  const y = edgeYMm - upMm;
  const name = `guide ${guide} round`;
  return [line(xMm - 2, y, xMm + 2, y, { widthMm: 0.4, ink: 'attention', name })];
}

function laneCount(piece: StripPiece): number {
  return Math.max(1, placeLabels(piece).lanes);
}

function placeLabels(piece: StripPiece) {
  const rows = marksOn(piece);
  const labels = rows.map((row) => {
    const whole = markLabel(row, piece.strip.tapeStep);
    return hasRoom(piece, row.fromOwnTipM * 1000, textWidthMm(whole, labelSizeMm))
      ? whole
      : textPieces(`${row.guide}`);
  });
  const places = placeInLanes(
    rows.map((row, k) => ({
      tickMm: row.fromOwnTipM * 1000,
      widthMm: textWidthMm(labels[k], labelSizeMm),
    })),
  );
  return { labels, places, lanes: 1 + Math.max(...places.map(({ lane }) => lane)) };
}

function hasRoom(piece: StripPiece, tickMm: number, widthMm: number): boolean {
  if (atButtEnd(piece)) return true;
  if (piece.joinAfterMm !== undefined) return tickMm <= piece.endMm - 2 * besideJoinMm;
  return tickMm + laneDefaults.besideTickMm + widthMm <= piece.endMm;
}

function marksOn({ strip, startMm, endMm }: StripPiece): MarkRow[] {
  return strip.section.rows.filter(({ fromOwnTipM }) => {
    const alongMm = fromOwnTipM * 1000;
    return alongMm >= startMm - 1e-9 && alongMm <= endMm + 1e-9;
  });
}

/** Dashed lines with their distance: two pieces are taped line on line. */
function joins({ piece, at, bodyTopMm, edgeMm: y }: Frame): Mark[] {
  return joinPlaces(piece).flatMap((alongMm) => {
    const x = at(alongMm);
    const words = `join at ${formatOnTape(alongMm / 1000, piece.strip.tapeStep)}`;
    return [
      line(x, bodyTopMm - 1.5, x, y + 1.5, { widthMm: 0.2, dashMm: [1, 1], name: `join ${alongMm}` }),
      line(x - 1.5, y - 6, x + 1.5, y - 6, { widthMm: 0.2 }),
      text(x, y + 3.2, words, { sizeMm: 2.2, align: 'middle', ink: 'grey' }),
    ];
  });
}

function joinPlaces({ joinBeforeMm, joinAfterMm }: StripPiece): number[] {
  return [joinBeforeMm, joinAfterMm].filter((join) => join !== undefined);
}
