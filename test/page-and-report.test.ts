import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { finishOfWork } from '../src/cli/finish-part.ts';
import { openBuild } from '../src/cli/open-build.ts';
import { workBuildFile } from '../src/cli/work-build-file.ts';
import { finishEffects } from '../src/engine/flow/finish-effects.ts';
import { makeLadder, readLadder } from '../src/engine/layout/ladder.ts';
import { ruleLadder } from '../src/engine/layout/rule-reading.ts';
import { sheetModel } from '../src/web/read/sheet-model.ts';

/** What the page asks its workers, held against what the report answers: with own marks, and with the marks taken off. */
const states = (name: string): [string, string][] => {
  const text = readFileSync(fileURLToPath(new URL(`../examples/${name}.json`, import.meta.url)), 'utf8');
  const file = JSON.parse(text) as { build: { guides?: Record<string, unknown>[] } };
  const own = file.build.guides?.some(({ station }) => station !== undefined) ?? false;
  for (const guide of file.build.guides ?? []) {
    delete guide.station;
    delete guide.pinned;
  }
  return [...(own ? [['own', text] as [string, string]] : []), ['start', JSON.stringify(file)]];
};

test.each(['two-piece-spigot', 'demo-spinning'])(
  '%s: page and report read the same rod at the same marks, own or not',
  (name) => {
    const folder = mkdtempSync(join(tmpdir(), 'fairbend-same-'));
    for (const [are, text] of states(name)) {
      const path = join(folder, `${are}.json`);
      writeFileSync(path, text);
      const worked = workBuildFile(openBuild(path));
      const { bench, choices, work } = worked;
      const model = sheetModel({ bench, choices, tables: work.tables });
      if (!model) throw new Error('the page has no layout');
      const { blank, diameters, rod, field } = model;
      expect([model.marksAre, work.standing.are]).toEqual([are, are]);
      expect(field.fromTipM).toEqual(work.standing.fromTipM);
      const ladder = makeLadder(model.ladder.ladder);
      const reading = readLadder(ladder, field.fromTipM);
      const shown = ruleLadder(ladder, field.fromTipM, reading, model.ladder.diameters);
      expect(shown.worstOf).toEqual(work.readings.standing.worstOf);
      expect(shown.loads.map(({ strain }) => strain)).toEqual(
        work.readings.standing.loads.map(({ strain }) => strain),
      );
      const parts = { bench, choices, blank, diameters, rod, ladder: model.ladder.ladder };
      expect(finishEffects(parts, field.fromTipM)).toEqual(finishOfWork(worked));
    }
    rmSync(folder, { recursive: true, force: true });
  },
);
