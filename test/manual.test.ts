import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { manualFiles, pageOrder } from '../scripts/manual/manual-files.mjs';
import { pictures } from '../scripts/manual/pictures.mjs';
import { renderBlocks, renderPage } from '../scripts/manual/render-manual.mjs';
import { howTo } from '../src/web/parts/sheet/how-to.ts';
import { steps } from '../src/web/parts/sheet/steps.ts';

const folder = fileURLToPath(new URL('../docs/manual/', import.meta.url));
const read = (page: string) => readFileSync(`${folder}${page}`, 'utf8');
const pages = readdirSync(folder).filter((name) => name.endsWith('.md'));

test('every step, and every screen of the blank, has its page', () => {
  const places = [
    ...steps.map(({ id }) => howTo(id)),
    ...['sections', 'readings', 'stiffness', 'spine', 'swing'].map((screen) => howTo('blank', screen)),
  ];
  const named = places.map((place) => place?.page);
  expect(named.filter((page) => page === undefined || !pages.includes(`${page}.md`))).toEqual([]);
  expect(new Set(named).size).toBe(steps.length + 4);
});

test('the first page leads to every other, and each of its links has a page', () => {
  const order: string[] = pageOrder(read('README.md'));
  expect([...order].sort()).toEqual([...pages].sort());
});

test.each(pages)('%s is short, and each picture it shows exists', (page) => {
  const text = read(page);
  expect(text.split(/\s+/).length).toBeLessThan(330);
  const shown = [...text.matchAll(/!\[([^\]]+)\]\((pictures\/[^)]+)\)/g)];
  expect(shown).toHaveLength(1);
  for (const [, , file] of shown) expect(existsSync(folder + file)).toBe(true);
});

test('every picture is taken by the script, shown on a page, and small', () => {
  const files = readdirSync(`${folder}pictures`);
  expect(files.sort()).toEqual(pictures.map(({ name }: { name: string }) => `${name}.png`).sort());
  const all = pages.map(read).join();
  for (const name of files) {
    expect(all).toContain(`pictures/${name}`);
    expect(statSync(`${folder}pictures/${name}`).size).toBeLessThan(60_000);
  }
});

test('what is served is what the repository shows', () => {
  const css = fileURLToPath(new URL('../scripts/manual/manual.css', import.meta.url));
  const served: { fileName: string; source: string | Uint8Array }[] = manualFiles(folder, css);
  const names = served.map(({ fileName }) => fileName);
  expect(names).toEqual(
    expect.arrayContaining(['manual/index.html', 'manual/readings.html', 'manual/manual.css']),
  );
  const html = served.filter(({ fileName }) => fileName.endsWith('.html'));
  for (const { source } of html) {
    const text = String(source);
    for (const [, to] of text.matchAll(/(?:href|src)="([^"/][^"]*)"/g))
      expect(names).toContain(`manual/${to}`);
    expect(text).not.toMatch(/\*\*|\]\(|^#/m);
  }
});

test('marks of Markdown become marks of a page, and what is typed stays text', () => {
  expect(renderBlocks('# A <b> & "c"')).toBe('<h1>A &lt;b> &amp; &quot;c&quot;</h1>');
  expect(renderBlocks('1. one\n2. **two**')).toBe('<ol><li>one</li><li><strong>two</strong></li></ol>');
  expect(renderBlocks('> mind\n> this')).toBe('<aside>mind this</aside>');
  expect(renderBlocks('![a rod](pictures/rod.png)')).toBe(
    '<figure><img src="pictures/rod.png" alt="a rod"></figure>',
  );
  expect(renderBlocks('see [x](readings.md), press `Enter`')).toBe(
    '<p>see <a href="readings.html">x</a>, press <kbd>Enter</kbd></p>',
  );
  expect(renderPage('a.md', '# A', ['a.md', 'b.md'])).toContain('<a href="b.html">Next page</a>');
});
