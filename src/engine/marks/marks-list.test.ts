import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assembleBlank } from '../bench/assemble.ts';
import { keepOutZones } from '../bench/ferrule-zones.ts';
import { fourPiece } from '../bench/test-bench.ts';
import { zoneAt, zonesOfRing } from '../layout/guide-moves.ts';
import { tickM } from '../units/tape-step.ts';
import { listMarks } from './marks-list.ts';

const blank = assembleBlank(fourPiece().sections);
const keepOut = keepOutZones(blank);
const footM = 0.018;
const zones = zonesOfRing(keepOut, footM);
const markOf = (fromTipM: number) =>
  listMarks(blank, [{ name: 'snake 1', fromTipM, footM }], '1/8 in', { keepOut }).sections.flatMap(
    ({ rows }) => rows,
  )[0];

test('a place clear of the ferrules is marked clear of them, at most one tick away', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: blank.lengthM - 0.3, noNaN: true }), (at) => {
      fc.pre(!zoneAt(zones, at));
      const { fromTipM } = markOf(at);
      expect(zoneAt(zones, fromTipM)).toBeUndefined();
      expect(Math.abs(fromTipM - at)).toBeLessThanOrEqual(tickM('1/8 in'));
    }),
  );
  // against a zone's very edge the nearest tick lies inside it in about half of all cases
  for (const { toTipM } of zones) expect(zoneAt(zones, markOf(toTipM).fromTipM)).toBeUndefined();
});

test('a guide that the builder puts on a ferrule is marked where he puts it', () => {
  const at = (zones[0].fromTipM + zones[0].toTipM) / 2;
  expect(Math.abs(markOf(at).fromTipM - at)).toBeLessThanOrEqual(tickM('1/8 in') / 2);
});
