import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inWords } from '../../test/support/in-words.ts';
import { workBuild } from '../engine/flow.ts';
import { readBuildFile } from '../record/file-read.ts';
import { readBuild } from '../record/read-build.ts';

type Row = Record<string, unknown> & { id: string };
type Build = Record<string, Row[]> & { blank: Record<string, unknown>; layout: Record<string, unknown> };
const example = new URL('../../examples/nine-foot-four-piece.json', import.meta.url);
const metres = (si: number) => ({ si, text: `${si * 1000} mm` });
const kilograms = (si: number) => ({ si, text: `${si * 1000} g` });

/** What is found in the invented four-piece after something was spoilt, as `fairbend check` finds it. */
function findingsAfter(spoil: (build: Build) => void) {
  const file = JSON.parse(readFileSync(example, 'utf8')) as { build: Build };
  file.build.blank.ferrulesBound = true;
  spoil(file.build);
  const read = readBuildFile(JSON.stringify(file), '2026-01-01T00:00:00Z');
  if (read.status === 'refused') return read.findings;
  const { bench, choices, findings } = readBuild(read.build.state);
  if (!bench || !choices || findings.some(({ severity }) => severity === 'stop')) return findings;
  return [...findings, ...workBuild(bench, choices).findings];
}

test('nothing is found in it as it is', () => {
  expect(findingsAfter(() => undefined)).toEqual([]);
});

test.each<[string, (build: Build) => void, RegExp, RegExp]>([
  [
    'a drop larger than the blank is long',
    ({ readings }) => Object.assign(readings[5], { drop: metres(5) }),
    /^readings\/.*\/drop$/,
    /5000 mm/,
  ],
  [
    'a weight in the wrong unit',
    ({ tests }) => Object.assign(tests[5], { hung: kilograms(50) }),
    /^tests\/.*\/hung$/,
    /50/,
  ],
  [
    'sections that do not add up',
    ({ blank }) => Object.assign(blank, { mass: kilograms(0.09) }),
    /^blank\/-\/mass$/,
    /90 g/,
  ],
  [
    'ferrules that overlap',
    ({ sections }) => Object.assign(sections[1], { overlap: metres(0.7) }),
    /^sections\//,
    /700 mm/,
  ],
  [
    'guides out of order',
    (build) => {
      build.guides = [0.3, 0.2, 1.9].map((at, i) => ({
        id: `g${i}`,
        order: i,
        kind: i === 2 ? 'stripping' : 'snake',
        station: metres(at),
      }));
    },
    /^guides\/g1\/station$/,
    /200 mm .*nearer the tip/,
  ],
  [
    'a chart with a typing slip',
    ({ layout }) =>
      Object.assign(layout, {
        startKind: 'chart',
        startText: '4.5 9.7 15.7 22.4 39.8 38 46.9 56.5 66.9 78',
        startUnit: 'inch',
        startFrom: 'tip',
      }),
    /^layout\/-\/startText$/,
    /About 75\d mm would fit/,
  ],
  [
    'an empty bench',
    (build) => Object.assign(build, { setups: [], tests: [], readings: [] }),
    /^readings$/,
    /guess from the diameters/,
  ],
])('%s is found at its field, with the value and the remedy', (_, spoil, path, message) => {
  const findings = findingsAfter(spoil);
  const atField = findings.filter((finding) => path.test(finding.path));
  expect(atField, JSON.stringify(findings)).not.toEqual([]);
  expect(
    atField.map((finding) => ('code' in finding ? inWords(finding) : finding.message)).join('\n'),
  ).toMatch(message);
});
