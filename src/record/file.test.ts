import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { applyOperations, emptyDocument, rows, valueAt } from './document.ts';
import { migrateFile } from './file-migrations.ts';
import { type ReadBuild, readBuildFile } from './file-read.ts';
import { buildFileJsonSchema, buildFileSchema, fileVersion } from './file-shape.ts';
import { buildFileOf, writeBuildFile } from './file-write.ts';

const at = '2026-03-01T09:00:00Z';

function read(text: string): ReadBuild {
  const result = readBuildFile(text, at);
  if (result.status === 'refused') throw new Error(JSON.stringify(result.findings));
  return result.build;
}

function refusal(file: unknown): string {
  const result = readBuildFile(typeof file === 'string' ? file : JSON.stringify(file), at);
  return result.status === 'ok' ? 'taken' : result.findings.map((f) => `${f.path}: ${f.message}`).join('\n');
}

function handWritten(build: unknown): object {
  return { format: 'fairbend build', version: 1, build };
}

describe('a file written and read', () => {
  test('gives back the very history, and the same file again', () => {
    fc.assert(
      fc.property(history, (log) => {
        const text = writeBuildFile(buildFileOf({ history: log }));
        const build = read(text);
        const sent = JSON.parse(JSON.stringify(log));
        expect(build.operations).toEqual(sent);
        expect([...build.state.cells].sort()).toEqual(
          [...applyOperations(emptyDocument('b', 'build'), sent).cells].sort(),
        );
        expect(writeBuildFile(buildFileOf({ history: build.operations }))).toBe(text);
      }),
      { seed: 10, numRuns: 150 },
    );
  });

  test('fits the published schema', () => {
    const schema = buildFileSchema();
    fc.assert(
      fc.property(history, (log) => {
        const file = JSON.parse(writeBuildFile(buildFileOf({ history: log })));
        expect(schema.safeParse(file).error?.issues).toBeUndefined();
      }),
      { seed: 11, numRuns: 50 },
    );
  });

  test('is readable: a quantity stands on one line, as typed', () => {
    const build = read(
      JSON.stringify(handWritten({ sections: [{ id: 's1', length: { si: 0.1143, text: '4 1/2 in' } }] })),
    );
    const text = writeBuildFile(buildFileOf({ history: build.operations }));
    expect(text).toContain('"length":{"si":0.1143,"text":"4 1/2 in"}');
  });
});

describe('a file written by hand', () => {
  test('needs no history, and its rows keep their order', () => {
    const build = read(
      JSON.stringify(
        handWritten({
          about: { title: 'By hand' },
          sections: [{ id: 'z' }, { id: 'tip', name: 'tip' }, { id: 'b' }],
        }),
      ),
    );
    expect(valueAt(build.state, ['about', '-', 'title'])).toBe('By hand');
    expect(rows(build.state, 'sections').map((row) => row.id)).toEqual(['z', 'tip', 'b']);
  });

  test('an edited value stands, and the history keeps the one before', () => {
    const first = read(JSON.stringify(handWritten({ about: { title: 'before', note: 'stays' } })));
    const text = writeBuildFile(buildFileOf({ history: first.operations }));
    const edited = read(text.replace('"title":"before"', '"title":"after"'));
    expect(valueAt(edited.state, ['about', '-', 'title'])).toBe('after');
    expect(valueAt(edited.state, ['about', '-', 'note'])).toBe('stays');
    expect(edited.operations.map((operation) => operation.value)).toContain('before');
  });
});

describe('a file that is refused', () => {
  const good = JSON.parse(
    writeBuildFile(
      buildFileOf({ history: read(JSON.stringify(handWritten({ about: { title: 'x' } }))).operations }),
    ),
  );
  test.each([
    ['empty', '', /no JSON, or only a part/],
    ['cut short', '{"format": "fairbend build", "vers', /no JSON, or only a part/],
    ['a picture', '\u0089PNG', /no JSON/],
    ['other JSON', [1, 2], /no build file/],
    ['another format', { ...good, format: 'rod' }, /no build file/],
    ['without a version', { ...good, version: undefined }, /^version: .*whole number/],
    ['of half a version', { ...good, version: 1.5 }, /^version: .*whole number/],
    ['of a newer version', { ...good, version: fileVersion + 1 }, /newer Fairbend.*up to version 1.*Update/],
    ['with an unknown part', { ...good, photos: [] }, /photos/],
    ['with an unknown collection', handWritten({ kites: [] }), /no collection "kites".*[Nn]ewer/],
    ['with an unknown field', handWritten({ about: { colour: 'red' } }), /no field "colour"/],
    ['with a row without an id', handWritten({ sections: [{ name: 'tip' }] }), /Row 1 of sections has no id/],
    ['with a row id twice', handWritten({ sections: [{ id: 'a' }, { id: 'a' }] }), /Two rows of sections/],
    ['with a list for an object', handWritten({ about: [] }), /about takes one object/],
    ['with an object for a list', handWritten({ sections: {} }), /sections takes a list/],
    [
      'with a value out of bounds',
      handWritten({ handle: { gripFront: { si: 30, text: '30' } } }),
      /handle\/-\/gripFront.*"30" \(30 m\)/,
    ],
    ['with a bad change', { ...good, history: [{ ...good.history[0], clock: -1 }] }, /^history\/0\/clock/],
    ['with a change twice', { ...good, history: [good.history[0], good.history[0]] }, /comes twice/],
    [
      'with a false hash',
      { ...good, attachments: [{ hash: 'x', type: 'image/png', base64: '' }] },
      /attachments\/0\/hash/,
    ],
    ['nested without end', `${'['.repeat(100_000)}${']'.repeat(100_000)}`, /no build file/],
    [
      'a value nested without end',
      `{"format":"fairbend build","version":1,"build":{"about":{"title":${'['.repeat(100_000)}${']'.repeat(100_000)}}}}`,
      /Title of build/,
    ],
  ])('%s', (_, file, message) => {
    expect(refusal(file)).toMatch(message);
  });

  test('far too large', () => {
    expect(refusal(' '.repeat(65 * 1024 ** 2))).toMatch(/65 MB.*at most 64 MB.*without its attachments/);
  });

  test('broken in any one place: refused or read, never an exception', () => {
    const text = JSON.stringify(good);
    fc.assert(
      fc.property(
        fc.nat(text.length - 1),
        fc.constantFrom('', '"', '}', '0', 'null', '\\', '[', ' '),
        (place, by) => {
          expect(() => readBuildFile(text.slice(0, place) + by + text.slice(place + 1), at)).not.toThrow();
        },
      ),
      { seed: 12, numRuns: 500 },
    );
  });
});

describe('migrations', () => {
  test('run one after the other from the version of the file', () => {
    const steps = {
      1: (file: Record<string, unknown>) => ({ ...file, a: 1 }),
      2: (file: Record<string, unknown>) => ({ ...file, b: [file.a, file.version] }),
    };
    expect(migrateFile({ version: 1 }, 3, steps)).toEqual({ version: 3, a: 1, b: [1, 2] });
    expect(migrateFile({ version: 3 }, 3, steps)).toEqual({ version: 3 });
    expect(() => migrateFile({ version: 3 }, 4, steps)).toThrow(/version 3/);
  });
});

test('the published schema is the one in force', async () => {
  const published = `${JSON.stringify(buildFileJsonSchema(), null, 2)}\n`;
  await expect(published).toMatchFileSnapshot('../../docs/schema/build-file.schema.json');
});
