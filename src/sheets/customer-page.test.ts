import { expect, test } from 'vitest';
import { cautions } from '../words/care.ts';
import { type CustomerRod, customerPage } from './customer-page.ts';

const straight = (angle: number) => {
  const at = [0, 0.5, 1, 1.5, 2].map((fromGrip) => fromGrip);
  const places = at.toReversed();
  return {
    xM: places.map((m) => m * Math.cos(angle)),
    yM: places.map((m) => m * Math.sin(angle)),
    rings: [2, 1.2, 0.4].map((m) => ({
      xM: m * Math.cos(angle),
      yM: m * Math.sin(angle) - 0.01,
      lineAngleRad: 0.1,
    })),
  } as unknown as NonNullable<CustomerRod['bend']>['loads'][number];
};
const rod = (words: string): CustomerRod => ({
  title: words,
  number: words,
  customer: words,
  shop: words,
  facts: words,
  date: words,
  madeOf: [words, words],
  guides: [{ guide: 1, name: words, fromTip: words }],
  bend: {
    loads: [straight(0.3), straight(-0.2)],
    names: [words, words],
    handleM: 0.4,
    squareM: 0.25,
    squareWords: words,
    measured: true,
  },
});
/** Every tag with its attributes' names, in order: what a browser would make of the page. */
const tags = (page: string) => [...page.matchAll(/<[^>]*>/g)].map(([tag]) => tag.replace(/"[^"]*"/g, '""'));

const odd = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  '</title></style><svg onload=alert(1)>',
  '&lt;b&gt; &amp; --> ]]>',
  'Ødegård & Çetin “Nine” 🎣 שלום',
  'javascript:alert(1) http://example.org',
];

test.each(odd)('words such as %s change no tag, and stand there as they were written', (words) => {
  const page = customerPage(rod(words));
  expect(tags(page)).toEqual(tags(customerPage(rod('plain'))));
  const text = page.replace(/<style>.*?<\/style>/s, '').replace(/<[^>]*>/g, '\n');
  const read = text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');
  expect(read.split(words).length).toBeGreaterThanOrEqual(10);
});

test('the page holds all it shows: no script, no address, nothing fetched', () => {
  const page = customerPage(rod('plain'));
  expect(page).not.toMatch(/<script|javascript:|https?:|\bsrc=|\bhref=|url\(|@import|\son\w+=/i);
  expect(page).toContain(`default-src 'none'`);
});

test('it says how it bends, what it is made of, and every caution once, sources once at the foot', () => {
  const page = customerPage(rod('plain'));
  for (const { title, words } of cautions) {
    expect(page.split(`<dt>${title}</dt>`)).toHaveLength(2);
    expect(page).toContain(words.replaceAll('&', '&amp;'));
  }
  expect(page.match(/common practice, no source/g)).toHaveLength(1);
  for (const head of ['How it bends', 'What it is made of', 'How to care for it'])
    expect(page).toContain(`<h2>${head}</h2>`);
});

test('the drawing is true to scale, heights up, and holds every load', () => {
  const svg = /<svg.*<\/svg>/s.exec(customerPage(rod('plain')))?.[0] ?? '';
  const lines = [...svg.matchAll(/<path d="M([^"]*)" fill="none" stroke="#(14212a|98a4a9)"/g)].map(([, d]) =>
    d.split('L').map((place) => place.split(' ').map(Number)),
  );
  expect(lines).toHaveLength(2);
  const lengths = lines.map((places) =>
    places.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - places[i][0], y - places[i][1]), 0),
  );
  // Both are 2 m of rod and 0.4 m of handle.
  expect(lengths[0] / lengths[1]).toBeCloseTo(1, 2);
  // The first points up: its tip stands higher on the page than its butt.
  expect(lines[0][0][1]).toBeLessThan(lines[0].at(-1)![1]);
  expect(lines[1][0][1]).toBeGreaterThan(lines[1].at(-1)![1]);
  const square = /M([\d.]+) 0V[\d.]+M([\d.]+) 0V/.exec(svg)!;
  expect((Number(square[2]) - Number(square[1])) / lengths[1]).toBeCloseTo(0.25 / 2.4, 2);
});

test('a rod that was never bent, with nothing noted, has the care and no empty heads', () => {
  const page = customerPage({ ...rod('plain'), bend: undefined, madeOf: [], guides: [] });
  expect(page).not.toMatch(/How it bends|What it is made of/);
  expect(page).toContain('How to care for it');
});
