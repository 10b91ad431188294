import { expect, test } from 'vitest';
import { strayGuide, tracedChanges } from '../../test/browser/traced-build.ts';
import { applyOperations, emptyDocument, makeOperations } from '../record/document.ts';
import { readBuild } from '../record/read-build.ts';
import { readDelivered } from '../record/read-delivered.ts';
import { readLoadTests } from '../record/read-load-tests.ts';
import { shopWriter } from '../words/writer.ts';
import { judgePart } from './judge-part.ts';
import { workBuildFile } from './work-build-file.ts';

test('the report says what the photographed rod shows, and nothing where there is no photograph', () => {
  const empty = emptyDocument('b', 'build');
  const by = { device: 'd', gesture: 'g', at: '2026-03-01T09:00:00Z' };
  const state = applyOperations(empty, makeOperations(empty, tracedChanges(), by));
  const build = {
    fileName: 'f',
    turned: [],
    swings: [],
    delivered: readDelivered(state),
    loadTests: readLoadTests(state),
    ...readBuild(state),
    writer: shopWriter({ system: 'mm' }),
  };
  const worked = workBuildFile(build);
  const said = judgePart(worked, build);
  expect(said).toMatch(/^The photographed load test of 2026-03-02, 120 g:/);
  expect(said).toMatch(new RegExp(`Guide ${strayGuide} is \\d+ mm ±\\d+ mm nearer the butt than its mark`));
  expect(said).toMatch(/Leave the guides\.|these moves bring it to/);
  expect(judgePart(worked, { ...build, loadTests: [] })).toBe('');
});
