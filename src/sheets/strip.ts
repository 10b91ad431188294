/**
 * One section at true size, cut into tiles that fit the paper. The lower edge of a tile is laid on the blank:
 * ticks and divisions stand on it, distances count from the section's own tip-side end, and every tile restates
 * them, so that errors of joining do not add up.
 */

import type { SectionMarks } from '../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep, tapeDenominator } from '../engine/units/tape-step.ts';
import { lineSideInWords } from '../words/line-side.ts';
import { line, type Mark, text, textPieces } from './drawing.ts';
import { placeInLanes } from './label-lanes.ts';
import { shortWords, textWidthMm } from './text-width.ts';

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
export interface Tile {
  strip: Strip;
  /** Counted from 0; with the whole number of them. */
  index: number;
  count: number;
  startMm: number;
  endMm: number;
}

/** A tile repeats this much of the one before, so that a label begun before the join has room. */
export const tileOverlapMm = 30;
export const tileHeightMm = 34;
const laneMm = 3.6;
const bodyTopMm = 20;
const edgeMm = 31;

/** Tiles of a section on paper that takes `roomMm` of strip, about equally long, joined at full centimetres. */
export function stripTiles(strip: Strip, roomMm: number): Tile[] {
  const longestStepMm = Math.floor(roomMm / 10) * 10 - tileOverlapMm;
  const lengthMm = strip.section.lengthM * 1000;
  const count = Math.max(1, Math.ceil(lengthMm / longestStepMm));
  const stepMm = Math.ceil(lengthMm / count / 10) * 10;
  return Array.from({ length: count }, (_, index) => {
    const startMm = index * stepMm;
    const endMm = Math.min(lengthMm, startMm + stepMm + (index === count - 1 ? 0 : tileOverlapMm));
    return { strip, index, count, startMm, endMm };
  });
}

/** The tile with its top left corner at the given place. */
export function drawTile(tile: Tile, leftMm: number, topMm: number): Mark[] {
  const at = (alongMm: number) => leftMm + alongMm - tile.startMm;
  const frame: Frame = { tile, at, topMm, edgeMm: topMm + edgeMm };
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
  tile: Tile;
  at: (alongMm: number) => number;
  topMm: number;
  edgeMm: number;
}

function heading({ tile, topMm }: Frame, leftMm: number): Mark[] {
  const { section, tapeStep } = tile.strip;
  const side = section.lineSide ? ` · line side ${shortWords(lineSideInWords(section.lineSide), 60)}` : '';
  const span = `${formatOnTape(tile.startMm / 1000, tapeStep)} to ${formatOnTape(tile.endMm / 1000, tapeStep)} from its tip end`;
  const words = `${section.name}, strip ${tile.index + 1} of ${tile.count}: ${span}${side}`;
  return [text(leftMm, topMm + 3, words, { sizeMm: 2.8, bold: true })];
}

function outline({ tile, at, topMm, edgeMm: y }: Frame): Mark[] {
  const [left, right] = [at(tile.startMm), at(tile.endMm)];
  const top = topMm + bodyTopMm;
  const isFirst = tile.index === 0;
  const isLast = tile.index === tile.count - 1;
  return [
    line(left, y, right, y, { widthMm: 0.3, name: 'edge to lay on the blank' }),
    line(left, top, right, top, { widthMm: 0.1, ink: 'grey' }),
    line(left, top, left, y, isFirst ? { widthMm: 0.5, name: 'tip end' } : { widthMm: 0.1, ink: 'grey' }),
    line(right, top, right, y, isLast ? { widthMm: 0.5, name: 'butt end' } : { widthMm: 0.1, ink: 'grey' }),
    ...(isFirst ? [endWord(left + 1, y, 'tip end', 'start')] : []),
    ...(isLast ? [endWord(right - 1, y, 'butt end', 'end')] : []),
  ];
}

function endWord(xMm: number, edgeYMm: number, words: string, align: 'start' | 'end'): Mark {
  return text(xMm, edgeYMm + 2.6, words, { sizeMm: 2.4, align });
}

/** Millimetres numbered every 10, or sixteenths or finer numbered every inch. */
function divisions({ tile, at, edgeMm: y }: Frame): Mark[] {
  const denominator = tapeDenominator(tile.strip.tapeStep);
  const perUnit = denominator === undefined ? 10 : Math.min(16, denominator);
  const stepMm = denominator === undefined ? 1 : 25.4 / perUnit;
  const first = Math.ceil(tile.startMm / stepMm - 1e-9);
  const last = Math.floor(tile.endMm / stepMm + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k).flatMap((count) => {
    const x = at(count * stepMm);
    const heightMm = divisionHeight(count % perUnit, perUnit);
    const short = line(x, y, x, y - heightMm, { widthMm: 0.12 });
    const number = denominator === undefined ? count : count / perUnit;
    const roomRight =
      at(tile.endMm) - x > 4 && joinPlaces(tile).every((join) => Math.abs(at(join) - x - 2) > 3);
    if (count % perUnit !== 0 || !roomRight) return [short];
    return [short, text(x + 0.4, y - 3.4, `${number}`, { sizeMm: 2.2, ink: 'grey' })];
  });
}

function divisionHeight(inUnit: number, perUnit: number): number {
  if (inUnit === 0) return 3;
  return inUnit === perUnit / 2 ? 2.2 : 1.4;
}

function zones({ tile, at, topMm }: Frame): Mark[] {
  return tile.strip.zones.flatMap((zone) => {
    const from = Math.max(tile.startMm, zone.fromOwnTipM * 1000);
    const to = Math.min(tile.endMm, zone.toOwnTipM * 1000);
    if (to <= from) return [];
    const y = topMm + bodyTopMm + 1.2;
    const words = textPieces(zone.words);
    const fits = textWidthMm(words, 2.2) + 1 <= to - from;
    return [
      { kind: 'area', xMm: at(from), yMm: y - 0.6, widthMm: to - from, heightMm: 1.2, ink: 'grey' } as const,
      ...(fits ? [text(at(from) + 0.8, y + 3, words, { sizeMm: 2.2, ink: 'grey' })] : []),
    ];
  });
}

/** Guide marks: the tick stands on the edge; a tick inside the overlap carries only its number there. */
function ticks({ tile, at, topMm, edgeMm: y }: Frame): Mark[] {
  const { section, tapeStep } = tile.strip;
  const rows = section.rows.filter(({ fromOwnTipM }) => inside(tile, fromOwnTipM * 1000));
  const labels = rows.map((row) => {
    const labelled = tile.index === tile.count - 1 || row.fromOwnTipM * 1000 <= tile.endMm - tileOverlapMm;
    const distances = `${formatOnTape(row.fromOwnTipM, tapeStep)} / ${formatOnTape(row.fromOwnButtM, tapeStep)}`;
    return textPieces(labelled ? `${row.guide}: ${distances}` : `${row.guide}`);
  });
  const places = placeInLanes(
    rows.map((row, k) => ({
      tickMm: at(row.fromOwnTipM * 1000),
      widthMm: textWidthMm(labels[k], labelSizeMm),
    })),
  );
  const lanes = 1 + Math.max(...places.map(({ lane }) => lane));
  return rows.flatMap((row, k) => {
    const x = at(row.fromOwnTipM * 1000);
    const laneYMm = topMm + bodyTopMm - 2 - laneMm * (lanes - 1 - places[k].lane);
    return [
      line(x, y, x, laneYMm - 1.6, { widthMm: 0.3, ink: 'attention', name: `guide ${row.guide}` }),
      text(places[k].leftMm, laneYMm, labels[k], { sizeMm: labelSizeMm }),
    ];
  });
}
const labelSizeMm = 2.6;

function inside(tile: Tile, alongMm: number): boolean {
  return alongMm >= tile.startMm - 1e-9 && alongMm <= tile.endMm + 1e-9;
}

/** Joins stand at full centimetres, whatever the marks are rounded to. */
function joinStep(step: TapeStep): TapeStep {
  return step.endsWith('mm') ? '1 mm' : '1/32 in';
}

/** Dashed lines in the middle of each overlap, with their distance: the two tiles are taped line on line. */
function joins({ tile, at, topMm, edgeMm: y }: Frame): Mark[] {
  return joinPlaces(tile).flatMap((alongMm) => {
    const x = at(alongMm);
    const y0 = topMm + bodyTopMm - 1.5;
    const words = `join at ${formatOnTape(alongMm / 1000, joinStep(tile.strip.tapeStep))}`;
    return [
      line(x, y0, x, y + 1.5, { widthMm: 0.2, dashMm: [1, 1], name: `join ${alongMm}` }),
      line(x - 1.5, y - 6, x + 1.5, y - 6, { widthMm: 0.2 }),
      text(x, y + 3.2, words, { sizeMm: 2.2, align: 'middle', ink: 'grey' }),
    ];
  });
}

function joinPlaces(tile: Tile): number[] {
  const before = tile.index > 0 ? [tile.startMm + tileOverlapMm / 2] : [];
  const after = tile.index < tile.count - 1 ? [tile.endMm - tileOverlapMm / 2] : [];
  return [...before, ...after];
}
