import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SectionMarks } from '../engine/marks/marks-list.ts';
import { besideJoinMm, type StripPiece, stripPieces } from './strip-pieces.ts';

const a4RoomMm = 257;

function marked(lengthMm: number, fromTipMm: readonly number[]): SectionMarks {
  const rows = fromTipMm.map((mm, index) => ({
    guide: index + 1,
    name: 'ring',
    fromTipM: mm / 1000,
    exactFromTipM: mm / 1000,
    intervalM: 0,
    fromOwnTipM: mm / 1000,
    fromOwnButtM: (lengthMm - mm) / 1000,
  }));
  return { id: 's', name: 'Section', lengthM: lengthMm / 1000, fromTipM: 0, toTipM: lengthMm / 1000, rows };
}
const cut = (lengthMm: number, fromTipMm: readonly number[], roomMm = a4RoomMm) =>
  stripPieces({ section: marked(lengthMm, fromTipMm), tapeStep: '1 mm', zones: [] }, roomMm);
const spans = (pieces: readonly StripPiece[]) => pieces.map(({ startMm, endMm }) => [startMm, endMm]);

describe('strip pieces', () => {
  it('a section without a mark needs no paper', () => {
    expect(cut(720, [])).toEqual([]);
  });
  it('a section that fits is one piece with both its ends; so is any section on a roll', () => {
    expect(spans(cut(220, [100]))).toEqual([[0, 220]]);
    expect(spans(cut(1400, [100, 700, 1300], Infinity))).toEqual([[0, 1400]]);
  });
  it('a mark near the butt end is reached from there, not by paper all the way from the tip end', () => {
    const [only, ...more] = cut(720, [600]);
    expect(more).toEqual([]);
    expect(only.endMm).toBe(720);
    expect(only.startMm).toBeLessThanOrEqual(594);
    expect(only.joinBeforeMm ?? only.joinAfterMm).toBeUndefined();
  });
  it('marks near both ends take two pieces and no join', () => {
    const pieces = cut(720, [100, 180, 560, 640]);
    expect(pieces.map(({ joinAfterMm }) => joinAfterMm)).toEqual([undefined, undefined]);
    expect(pieces[0].startMm).toBe(0);
    expect(pieces[1].endMm).toBe(720);
  });

  /** Pieces that reach so far from an end; a join may cost up to a full centimetre, a label its width. */
  const reach = (farMm: number, roomMm: number, lostMm: number, labelMm: number) =>
    farMm <= 0
      ? 0
      : 1 + Math.max(0, Math.ceil((farMm + labelMm - roomMm) / (roomMm - 2 * besideJoinMm - lostMm)));
  const fewest = (lengthMm: number, at: readonly number[], roomMm: number, lostMm = 0, labelMm = 0) =>
    Math.min(
      ...Array.from(
        { length: at.length + 1 },
        (_, k) =>
          reach(k === 0 ? 0 : at[k - 1], roomMm, lostMm, labelMm) +
          reach(k === at.length ? 0 : lengthMm - at[k], roomMm, lostMm, labelMm),
      ),
    );
  const anySection = fc.record({
    lengthMm: fc.integer({ min: 300, max: 2900 }),
    shares: fc.array(fc.double({ min: 0.02, max: 0.98, noNaN: true }), { minLength: 1, maxLength: 12 }),
    roomMm: fc.constantFrom(239, 257, 315, 380),
  });
  it('any section: every mark is on paper, on as few pieces as cutting at full centimetres allows', () => {
    fc.assert(
      fc.property(anySection, ({ lengthMm, shares, roomMm }) => {
        const at = shares.map((share) => Math.round(share * lengthMm)).sort((a, b) => a - b);
        const pieces = cut(lengthMm, at, roomMm);
        expect(pieces.length).toBeGreaterThanOrEqual(fewest(lengthMm, at, roomMm));
        expect(pieces.length).toBeLessThanOrEqual(fewest(lengthMm, at, roomMm, 10, 45));
        for (const mm of at)
          expect(pieces.some(({ startMm, endMm }) => mm >= startMm && mm <= endMm)).toBe(true);
        for (const { startMm, endMm } of pieces) expect(endMm - startMm).toBeLessThanOrEqual(roomMm);
      }),
      { seed: 12, numRuns: 400 },
    );
  });
  it('any section: each piece starts at an end of its section, or is joined to one that does', () => {
    fc.assert(
      fc.property(anySection, ({ lengthMm, shares, roomMm }) => {
        const at = shares.map((share) => Math.round(share * lengthMm)).sort((a, b) => a - b);
        const pieces = cut(lengthMm, at, roomMm);
        pieces.forEach((piece, k) => {
          expect(piece.startMm === 0 || piece.joinBeforeMm !== undefined || k >= firstFromButt(pieces)).toBe(
            true,
          );
          if (piece.joinAfterMm === undefined) return;
          expect(pieces[k + 1].joinBeforeMm).toBe(piece.joinAfterMm);
          expect(piece.endMm).toBeCloseTo(piece.joinAfterMm + besideJoinMm, 9);
        });
        const last = pieces.at(-1)!;
        expect(pieces[0].startMm === 0 || last.endMm === lengthMm).toBe(true);
      }),
      { seed: 13, numRuns: 400 },
    );
  });
});

/** From here on the pieces are joined, one to the next, down to the butt end; past the last where none are. */
function firstFromButt(pieces: readonly StripPiece[]): number {
  const last = pieces.at(-1);
  if (!last || last.endMm !== last.strip.section.lengthM * 1000) return pieces.length;
  let k = pieces.length - 1;
  while (k > 0 && pieces[k].joinBeforeMm !== undefined) k--;
  return k;
}
