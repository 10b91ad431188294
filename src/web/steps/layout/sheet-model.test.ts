import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assembleBlank } from '../../../engine/bench/assemble.ts';
import { diameterProfile } from '../../../engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../../../engine/bench/estimate.ts';
import { commonGuides } from '../../../engine/kinds/common-build.ts';
import { makeLadder, readLadder } from '../../../engine/layout/ladder.ts';
import { applyOperations, makeOperations } from '../../../record/document.ts';
import { readBuildFile } from '../../../record/file-read.ts';
import type { Change } from '../../../record/operation.ts';
import { readBuild } from '../../../record/read-build.ts';
import { sheetModel } from '../../read/sheet-model.ts';
import { markChanges } from './mark-changes.ts';
import { marksOnTape } from './marks-on-tape.ts';

const invented = new URL('../../../../examples/nine-foot-four-piece.json', import.meta.url);

/** The sheet of an invented build without chosen marks after some changes, its stiffness estimated from the diameters. */
function sheet(changes: readonly Change[] = []) {
  const file = readBuildFile(readFileSync(invented, 'utf8'), '2026-01-01T00:00:00Z');
  if (file.status === 'refused') throw new Error(file.findings[0].message);
  const by = { device: 'test-1', gesture: 'test', at: '2026-01-01T00:00:00Z' };
  const { state } = file.build;
  const { bench, choices } = readBuild(applyOperations(state, makeOperations(state, changes, by)));
  if (!bench || !choices) throw new Error('the build makes no bench');
  const profile = diameterProfile(bench.sections, assembleBlank(bench.sections));
  const model = sheetModel({ bench, choices, tables: estimateFromDiameters(profile, bench.material) });
  if (!model) throw new Error('the build makes no sheet');
  return model;
}
const list = (text: string): Change[] => [
  { path: ['layout', '-', 'startKind'], value: 'own' },
  { path: ['layout', '-', 'startText'], value: text },
];
let rowsMade = 0;
const writing = (model: ReturnType<typeof sheet>) => ({
  choices: model.choices,
  system: 'inch' as const,
  newRowId: () => `row${++rowsMade}`,
});

describe('the sheet of a build', () => {
  it('stands at the start’s marks while the record has none', () => {
    const model = sheet();
    expect(model.marksAre).toBe('start');
    expect(model.field.fromTipM).toEqual(model.startFromTipM);
    expect(model.unreadable).toBeUndefined();
  });
  it('reads the start with the guides of the rod as they are bound on, or as many common ones', () => {
    const model = sheet();
    expect(model.startLadder).toEqual(model.ladder);
    const fewer = sheet(list('5 11 18 26 35 45 56 68 78'));
    const { massesKg = [], count } = fewer.startLadder.ladder.guides;
    expect([count, massesKg.length]).toEqual([9, 9]);
    const bare = commonGuides({ rodKind: 'fly', lineWeight: '5', blankLengthM: 2.743 }, 9).guides;
    const heavier = massesKg.filter((kg, index) => kg > bare[index].massKg * 1.05);
    expect(heavier).toHaveLength(9);
  });
  it('gives a rod that bends with the marks shown, under every load', () => {
    const model = sheet();
    const reading = readLadder(makeLadder(model.ladder.ladder), model.field.fromTipM);
    expect(reading.status).toBe('converged');
    expect(reading.loads).toHaveLength(model.loads.kg.length);
  });
  it('keeps the rod as it is while marks move, so that nothing is worked out again in vain', () => {
    const model = sheet();
    const moved = model.field.fromTipM.map((at, i) => (i === 4 ? at + 0.01 : at));
    const after = sheet(markChanges(moved, writing(model)));
    expect(after.marksAre).toBe('own');
    expect(after.ladder).toEqual(model.ladder);
    expect(after.startLadder).toEqual(model.startLadder);
  });
  it('does not take a list for a start that does not climb, and says so by spreading the guides evenly', () => {
    const model = sheet(list('4 9 15 22 40 38 47 56 66 78'));
    expect(model).toMatchObject({ startStands: false, marksAre: 'spread' });
    expect(model.request.start).toBeUndefined();
    expect(model.unreadable).toBeUndefined();
  });
  it('names the guides that stand at one place', () => {
    const model = sheet();
    const same = model.field.fromTipM.map((at, i) => (i === 5 ? model.field.fromTipM[4] : at));
    expect(sheet(markChanges(same, writing(model))).unreadable).toMatch(/^Guides 5 and 6 stand at the same/);
  });
});

describe('marks written to the record', () => {
  it('make rows of guides that so far only stood for common practice, and come back as shown', () => {
    const model = sheet();
    const marks = marksOnTape(
      model.field,
      model.field.fromTipM.map((at) => at + 0.0004),
      'inch',
    );
    const after = sheet(markChanges(marks, writing(model)));
    after.field.fromTipM.forEach((at, i) => {
      expect(Math.abs(at - marks[i])).toBeLessThanOrEqual(0.0254 / 64);
    });
    expect(after.choices.guides.map(({ kind, size }) => `${kind} ${size}`)).toEqual(
      model.choices.guides.map(({ kind, size }) => `${kind} ${size}`),
    );
  });
  it('write only what moved', () => {
    const model = sheet();
    const set = sheet(markChanges(model.field.fromTipM, writing(model)));
    const moved = set.field.fromTipM.map((at, i) => (i === 2 ? at + 0.005 : at));
    expect(markChanges(moved, writing(set))).toHaveLength(1);
    expect(markChanges(set.field.fromTipM, writing(set))).toHaveLength(0);
  });
});
