import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, openBench } from './open-bench.ts';

const script = '<img src=x onerror="window.attacked=1"><script>window.attacked=1</script>';
const hostile = [
  `"'>${script}`,
  '{{constructor.constructor("window.attacked=1")()}} javascript:window.attacked=1',
  '\u202E🎣👨‍👩‍👧‍👦 חכה \u202C',
];

let bench: Bench;
/** A site of somebody else's, which counts what it is asked for. */
let elsewhere: Server;
let foreign = '';
let asked = 0;
beforeAll(async () => {
  bench = await openBench();
  elsewhere = createServer((_, response) => {
    asked++;
    response.setHeader('content-type', 'text/html');
    response.end('<title>Somebody else</title><p>hello');
  });
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve));
  foreign = `http://localhost:${(elsewhere.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await bench?.close();
  elsewhere?.close();
});

async function countBuilds(): Promise<number> {
  const response = await fetch(`${bench.server.address}/api/documents`);
  return ((await response.json()) as { total: number }).total;
}

const attacked = (page: Page) =>
  page.evaluate(() => (window as unknown as { attacked?: number }).attacked ?? 0);

test('scripts in every name a builder can give are shown as letters, on every sheet', async () => {
  const text = hostile.join(' ');
  const changes = [
    { path: ['about', '-', 'title'], value: text.slice(0, 120) },
    { path: ['about', '-', 'customer'], value: script },
    { path: ['about', '-', 'note'], value: text },
    { path: ['tags', 't', 'text'], value: script.slice(0, 40) },
    { path: ['blank', '-', 'label'], value: script.slice(0, 60) },
    { path: ['blank', '-', 'series'], value: script.slice(0, 60) },
    { path: ['sections', 's1', 'name'], value: script.slice(0, 40) },
  ];
  const response = await fetch(`${bench.server.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build', changes }),
  });
  const { id, message } = (await response.json()) as { id: string; message?: string };
  expect(response.status, message).toBe(201);
  const page = await bench.openPage('/');
  await page.getByText('onerror').first().waitFor();
  expect(await attacked(page)).toBe(0);
  for (const step of ['blank', 'layout', 'marks', 'plan', 'papers', 'history']) {
    await page.goto(`${bench.server.address}/builds/${id}/${step}`);
    await page.getByText('onerror').first().waitFor();
    expect(await attacked(page), step).toBe(0);
  }
});

test('a script that got into the page is not run, and nothing is fetched from elsewhere', async () => {
  const page = await bench.openPage('/');
  await page.getByRole('heading').first().waitFor();
  const before = asked;
  const done = await page.evaluate(async (address) => {
    const inline = document.createElement('script');
    inline.textContent = 'window.attacked = 1';
    const other = document.createElement('script');
    other.src = `${address}/x.js`;
    const image = document.createElement('img');
    image.src = `${address}/x.png`;
    const frame = document.createElement('iframe');
    frame.src = address;
    const holder = document.createElement('div');
    holder.innerHTML = '<b onclick="window.attacked = 1" style="position:fixed">x</b>';
    document.body.append(inline, other, image, frame, holder);
    holder.querySelector('b')!.click();
    const sent = await fetch(address, { mode: 'no-cors' }).then(
      () => 'sent',
      () => 'refused',
    );
    // From a timer: what the test itself evaluates is let through by the browser's own tools.
    const evaluated = await new Promise<string>((resolve) => {
      setTimeout(() => {
        try {
          resolve(new Function('return "run"')() as string);
        } catch {
          resolve('refused');
        }
      });
    });
    return { sent, evaluated };
  }, foreign);
  expect(done).toEqual({ sent: 'refused', evaluated: 'refused' });
  expect(await attacked(page)).toBe(0);
  expect(asked).toBe(before);
});

test('a page of somebody else’s can neither write nor read nor frame the record', async () => {
  const builds = await countBuilds();
  const page = await bench.openPage('/');
  await page.goto(foreign);
  const tried = await page.evaluate(async (address) => {
    const outcome = (request: Promise<Response>) =>
      request.then(
        (response) => `${response.type} ${response.status}`,
        () => 'refused',
      );
    const api = `${address}/api/documents`;
    const body = JSON.stringify({ kind: 'build' });
    const json = { 'content-type': 'application/json' };
    const read = await outcome(fetch(api));
    const write = await outcome(fetch(api, { method: 'POST', headers: json, body }));
    const blind = await outcome(fetch(api, { method: 'POST', mode: 'no-cors', body }));
    const form = document.createElement('form');
    form.action = api;
    form.method = 'post';
    form.enctype = 'text/plain';
    form.target = 'hidden';
    form.innerHTML = `<input name='{"kind":"build","x":"' value='"}'>`;
    const hidden = document.createElement('iframe');
    hidden.name = 'hidden';
    const frame = document.createElement('iframe');
    frame.src = address;
    document.body.append(hidden, frame, form);
    const loaded = new Promise((resolve) => hidden.addEventListener('load', resolve));
    form.submit();
    await loaded;
    return { read, write, blind };
  }, bench.server.address);
  expect(tried).toEqual({ read: 'refused', write: 'refused', blind: 'refused' });
  expect(await countBuilds()).toBe(builds);
  const framed = page.frames().filter((frame) => frame.parentFrame() && frame.name() !== 'hidden');
  for (const frame of framed) expect(await frame.getByRole('heading').count()).toBe(0);
});
