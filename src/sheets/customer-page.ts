/**
 * The finished rod on one page for its customer: how it bends, what it is made of, how to care for it. One HTML file
 * that holds all it shows, without a script and without an address; nothing of the shop's rates or notes.
 */
import { careSources, cautions } from '../words/care.ts';
import { bendFigure, type CustomerBend } from './bend-figure.ts';
import { customerPageStyle } from './customer-page-style.ts';
import { escapeXml } from './svg.ts';

export interface CustomerRod {
  title: string;
  number: string;
  customer: string;
  shop: string;
  /** `9 ft, 4 sections, line 5`. */
  facts: string;
  date: string;
  /** What went into it, in the builder's words. */
  madeOf: readonly string[];
  guides: readonly { guide: number; name: string; fromTip: string }[];
  /** Undefined where the rod was never bent here. */
  bend?: CustomerBend;
}
export function customerPage(rod: CustomerRod): string {
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    // Belt and braces: even if words got past the escaping, nothing would run and nothing would be fetched.
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escapeXml(rod.title)}</title><style>${customerPageStyle}</style></head><body><main>`,
    head(rod),
    rod.bend ? bendPart(rod.bend) : '',
    madeOfPart(rod),
    carePart(),
    titleBlock(rod),
    '</main></body></html>\n',
  ].join('\n');
}

function head({ title, facts, customer }: CustomerRod): string {
  const built = customer === '' ? '' : `<p>Built for ${escapeXml(customer)}</p>`;
  return `<header><h1>${escapeXml(title)}</h1><p>${escapeXml(facts)}</p>${built}</header>`;
}

function bendPart(bend: CustomerBend): string {
  const from = bend.measured
    ? 'Worked out from what was measured on this very blank.'
    : 'Worked out from the diameters of this blank.';
  const words = `To scale, a square is ${bend.squareWords}. The line runs through the guides under ${bend.names.at(-1)}. A drawing, no weight to lift with the rod.`;
  return `<section><h2>How it bends</h2><figure>${bendFigure(bend)}<figcaption>${escapeXml(`${words} ${from}`)}</figcaption></figure></section>`;
}

function madeOfPart({ madeOf, guides }: CustomerRod): string {
  if (madeOf.length + guides.length === 0) return '';
  const parts = madeOf.map((what) => `<li>${escapeXml(what)}</li>`).join('');
  const rows = guides
    .map(
      ({ guide, name, fromTip }) =>
        `<tr><th scope="row">${guide}</th><td>${escapeXml(name)}</td><td>${escapeXml(fromTip)}</td></tr>`,
    )
    .join('');
  const table =
    rows &&
    `<table><thead><tr><th scope="col">Guide</th><th scope="col">Kind</th><th scope="col">From the tip</th></tr></thead><tbody>${rows}</tbody></table>`;
  return `<section><h2>What it is made of</h2><div class="made">${parts && `<ul>${parts}</ul>`}${table}</div></section>`;
}

function carePart(): string {
  const lines = cautions.map(
    ({ title, words }) => `<dt>${escapeXml(title)}</dt><dd>${escapeXml(words)}</dd>`,
  );
  const sources = careSources().map(
    ({ titles, source }) => `${escapeXml(titles.join(', '))}: ${escapeXml(source)}.`,
  );
  const last = 'Local rules and those who know the water and the weather come before this page.';
  return `<section><h2>How to care for it</h2><dl>${lines.join('')}</dl><p>${last}</p><p class="sources">${sources.join(' ')}</p></section>`;
}

function titleBlock({ shop, date, number }: CustomerRod): string {
  const cells: [name: string, words: string][] = [
    ['Built by', shop],
    ['Date', date],
    ['Number', number],
  ];
  const shown = cells
    .filter(([, words]) => words !== '')
    .map(([name, words]) => `<div><dt>${name}</dt><dd>${escapeXml(words)}</dd></div>`);
  return `<footer><dl>${shown.join('')}</dl></footer>`;
}
