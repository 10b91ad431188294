import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

/**
 * The engine gives codes and quantities; src/words makes the sentences. So no text of two words or more stands in the
 * engine, but for what is thrown (a broken invariant, read by whoever mends it) and these:
 */
const declared = [
  // a kind of guide or rod is one declaration, its name with it
  /^kinds\//,
  // sheets of labels by the size they are sold as
  /^delivery\/label-stock\.ts$/,
  // symbols of units
  /^units\/unit-table\.ts$/,
];
const engine = fileURLToPath(new URL('../src/engine/', import.meta.url));
const all = readdirSync(engine, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.ts$/.test(file) && !/\.test\.ts$|test-bench/.test(file));
const isDeclared = (file: string) => declared.some((allowed) => allowed.test(file));
const textsOf = (file: string) => wordsIn(readFileSync(engine + file, 'utf8'));
/** What the declarations name, such as the reel that is a `fixed spool`: others may ask for it by that name. */
const names = new Set(all.filter(isDeclared).flatMap(textsOf));
const files = all.filter((file) => !isDeclared(file));

test('no sentence stands in the engine', () => {
  expect(files.length).toBeGreaterThan(200);
  const found = files.flatMap((file) =>
    textsOf(file)
      .filter((words) => !names.has(words))
      .map((words) => `${file}: ${words}`),
  );
  expect(found).toEqual([]);
});

test('the reader of texts finds them in every kind of quotes, and no comment', () => {
  const source = [
    "const a = 'two words'; // 'not this'",
    'const b = `more words`;',
    "/* 'nor this one' */ throw new Error(`thrown is fine`);",
    "const c = 'id-of-it'; const d = 'single';",
  ].join('\n');
  expect(wordsIn(source)).toEqual(['two words', 'more words']);
});

/** Texts of two words or more in the source, those of an error aside. */
function wordsIn(source: string): string[] {
  const token =
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|(?<=[(,=&|!] ?)\/(?:\\.|\[[^\]\n]*\]|[^/\\\n[])+\/|(new \w*Error\(\s*)?('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`)/g;
  return [...source.matchAll(token)].flatMap(([, thrown, text]) =>
    text && !thrown && /[A-Za-z]{2,} [A-Za-z]{2,}/.test(text) ? [text.slice(1, -1)] : [],
  );
}
