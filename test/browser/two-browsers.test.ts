import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentAnswer, DocumentSummary } from '../../src/record/api.ts';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

async function newBuild(): Promise<string> {
  const response = await fetch(`${bench.server.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build' }),
  });
  return ((await response.json()) as DocumentSummary).id;
}

/** A new build's Blank step, its fields on the screen: they fold once a title stands that was not there at first. */
async function openBlank(id: string): Promise<Page> {
  const page = await bench.openPage(`/builds/${id}/blank`);
  await page.getByRole('textbox', { name: 'Title' }).waitFor();
  return page;
}

/** What the server has on disk at a path. */
async function stored(id: string, path: string): Promise<unknown> {
  const response = await fetch(`${bench.server.address}/api/documents/${id}`);
  const { cells } = (await response.json()) as DocumentAnswer;
  return Object.fromEntries(cells)[path]?.value;
}

async function fill(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name });
  await field.fill(text);
  await field.press('Enter');
}

function field(page: Page, name: string): Promise<string> {
  return page.getByRole('textbox', { name }).inputValue();
}

const saved = (page: Page) => page.getByText('every change is on the disk').waitFor();
const kept = (page: Page) => page.getByText('kept in this browser').waitFor();

test('two browsers on one build see each other', async () => {
  const id = await newBuild();
  const [one, two] = [await openBlank(id), await openBlank(id)];
  await fill(one, 'Title', 'Seen by both');
  await two.getByRole('heading', { name: 'Seen by both' }).waitFor();
  await fill(two, 'Customer', 'An invented angler');
  await expect.poll(() => field(one, 'Customer')).toBe('An invented angler');
});

test('with the network cut both go on, say so, and merge when it is back', async () => {
  const id = await newBuild();
  const [one, two] = [await openBlank(id), await openBlank(id)];
  await fill(one, 'Title', 'Before');
  await two.getByRole('heading', { name: 'Before' }).waitFor();
  await bench.stopServer();
  await fill(one, 'Title', 'From the first');
  await fill(two, 'Customer', 'From the second');
  await Promise.all([kept(one), kept(two)]);
  await bench.restart();
  await Promise.all([saved(one), saved(two)]);
  await expect.poll(() => field(one, 'Customer'), { timeout: 15_000 }).toBe('From the second');
  await expect.poll(() => field(two, 'Title'), { timeout: 15_000 }).toBe('From the first');
  expect(await stored(id, 'about/-/title')).toBe('From the first');
});

test('one field changed apart shows both values to both until one of them chooses; neither is called the later', async () => {
  const id = await newBuild();
  const [one, two] = [await openBlank(id), await openBlank(id)];
  await fill(one, 'Customer', 'Before');
  await expect.poll(() => field(two, 'Customer')).toBe('Before');
  await bench.stopServer();
  await fill(one, 'Customer', 'From the first');
  await fill(two, 'Customer', 'From the second');
  await Promise.all([kept(one), kept(two)]);
  await bench.restart();
  for (const page of [one, two]) {
    const choice = page.getByRole('group', { name: 'Two values of' });
    await choice.getByRole('button', { name: 'From the first' }).waitFor({ timeout: 15_000 });
    await choice.getByRole('button', { name: 'From the second' }).waitFor();
    expect(await choice.textContent()).not.toMatch(/later|earlier/);
  }
  await two.reload();
  await two.getByRole('button', { name: 'From the first' }).click();
  for (const page of [one, two])
    await page.getByRole('group', { name: 'Two values of' }).waitFor({ state: 'detached' });
  await expect.poll(() => stored(id, 'about/-/customer')).toBe('From the first');
});

test('a page closed before the server had its change sends it when the browser comes back, wherever it opens', async () => {
  const id = await newBuild();
  const page = await openBlank(id);
  await fill(page, 'Title', 'Before');
  await saved(page);
  await bench.stopServer();
  await fill(page, 'Title', 'Typed into the void');
  await kept(page);
  const context = page.context();
  await page.close({ runBeforeUnload: false });
  await bench.restart();
  expect(await stored(id, 'about/-/title')).toBe('Before');
  const shelf = await context.newPage();
  await shelf.goto(bench.server.address);
  await expect.poll(() => stored(id, 'about/-/title'), { timeout: 15_000 }).toBe('Typed into the void');
});

test('the browser complains of nothing but the server that was away', () => {
  const away =
    /ERR_CONNECTION_REFUSED|ERR_CONNECTION_RESET|ERR_INCOMPLETE_CHUNKED_ENCODING|ERR_EMPTY_RESPONSE/;
  expect(bench.complaints.filter((line) => !away.test(line))).toEqual([]);
});
