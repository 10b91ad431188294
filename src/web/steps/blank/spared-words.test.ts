import { describe, expect, it } from 'vitest';
import { planProtocol } from '../../../engine/bench/protocol.ts';
import { applyOperations, emptyDocument, makeOperations, rows } from '../../../record/document.ts';
import { plainText } from '../../../sheets/drawing.ts';
import { protocolSheet } from '../../../sheets/protocol-sheet.ts';
import { planRows } from './plan-rows.ts';
import { setupRowsOf } from './reading-rows.ts';
import { isSpared, notSparedWords, sparedLine } from './spared-words.ts';

const known = { name: 'Invented 46', wanted: true, inFull: 3 };

/** The protocol and its rows, as laid out on the screen. */
function laidOut(kind: 'with-series' | 'twenty-minute' | 'ten-minute') {
  const tipDropM = (q: { clampFromTipM: number; massKg: number }) =>
    (q.clampFromTipM * q.massKg) / (q.massKg + 0.2);
  const plan = planProtocol({ kind, blankLengthM: 2.743, tipDropM });
  let made = 0;
  const newRowId = () => `row${++made}`;
  const changes = planRows(plan, {
    system: 'inch',
    edge: 'upper',
    clampHeight: null,
    firstOrder: 0,
    newRowId,
  });
  const empty = emptyDocument('b', 'build');
  const stamp = { device: 'd-s', gesture: 'g', at: '2026-01-01T00:00:00Z' };
  const document = applyOperations(empty, makeOperations(empty, changes, stamp));
  return { plan, setups: setupRowsOf((collection) => rows(document, collection)) };
}

describe('the shorter protocol', () => {
  it('waits for three blanks measured in full, and for the builder’s word', () => {
    expect(isSpared(known)).toBe(true);
    expect(isSpared({ ...known, inFull: 2 })).toBe(false);
    expect(isSpared({ ...known, wanted: false })).toBe(false);
    expect(isSpared({ ...known, name: undefined })).toBe(false);
    expect(notSparedWords({ ...known, inFull: 2 })).toMatch(/2 are so far/);
    expect(notSparedWords({ ...known, name: undefined })).toBeUndefined();
  });

  it('says on paper why it is shorter; the other two say nothing', () => {
    const { plan, setups } = laidOut('with-series');
    const shorter = sparedLine(known, setups);
    expect(shorter).toMatch(/Half the protocol: 3 measured blanks of its series/);
    const named = plan.setups.map((setup) => ({ ...setup, name: setup.stand }));
    const sheet = protocolSheet(
      { ...plan, setups: named },
      { paper: 'a4', stamp: 'x', tapeStep: '1/16 in', shorter },
    );
    const words = sheet.pages[0].marks.flatMap((mark) =>
      mark.kind === 'text' ? plainText(mark.pieces) : [],
    );
    expect(words).toContain(shorter);
    for (const kind of ['twenty-minute', 'ten-minute'] as const)
      expect(sparedLine(known, laidOut(kind).setups)).toBeUndefined();
  });
});
