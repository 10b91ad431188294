import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { htmlName, renderPage } from './render-manual.mjs';

/** Every file of the manual as it is served under /manual: its pages in their order, its pictures, its style. */
export function manualFiles(docs, css) {
  const pages = pageOrder(readFileSync(join(docs, 'README.md'), 'utf8'));
  const rendered = pages.map((page) => ({
    fileName: `manual/${htmlName(page)}`,
    source: renderPage(page, readFileSync(join(docs, page), 'utf8'), pages),
  }));
  const pictures = readdirSync(join(docs, 'pictures'))
    .filter((name) => name.endsWith('.png'))
    .map((name) => ({
      fileName: `manual/pictures/${name}`,
      source: readFileSync(join(docs, 'pictures', name)),
    }));
  return [...rendered, ...pictures, { fileName: 'manual/manual.css', source: readFileSync(css) }];
}

/** As the first page lists them. */
export function pageOrder(first) {
  return ['README.md', ...[...first.matchAll(/\]\(([\w-]+\.md)\)/g)].map(([, page]) => page)];
}
