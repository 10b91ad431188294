import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { holdBackDoubts, type LayoutPage, middleOf, openLayout } from './layout-page.ts';
import { everyLook, expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
let layout: LayoutPage;
beforeAll(async () => {
  bench = await openBench();
  layout = await openLayout(bench);
});
afterAll(() => bench?.close());

const undo = () => layout.page.getByRole('button', { name: /^Undo/ });
const limitAndValue = async () => {
  const text = (await layout.worst.textContent()) ?? '';
  const [, value, limit] = /line angle ([\d.]+)° of ([\d.]+)°/.exec(text) ?? [];
  return { text, value: Number(value), limit: Number(limit) };
};

/** The worst reading over its limit, as the headline writes both. */
async function worstShare(): Promise<number> {
  const text = (await layout.worst.getAttribute('data-text')) ?? '';
  const figures = / ([\d ./]+)(?:°|%| %| in| mm)? of ([\d ./]+)/.exec(text);
  const number = (figure = '') =>
    figure
      .trim()
      .split(' ')
      .reduce((sum, part) => {
        const [above, below = '1'] = part.split('/');
        return sum + Number(above) / Number(below);
      }, 0);
  return number(figures?.[1]) / number(figures?.[2]);
}

test('the start is beyond a limit, and the sheet says where and at which load', async () => {
  const { text, value, limit } = await limitAndValue();
  expect(text).toMatch(/^Guide \d+ at \d+ g, line angle/);
  expect(value).toBeGreaterThan(limit);
  await layout.page.getByText("These are the start's marks (arithmetic rule).").waitFor();
  await layout.page.getByText(/^Placed for this blank, the worst would be/).waitFor();
});

test('under the headline stands how sure it is, and once guides are placed how often they beat the start', async () => {
  const { page } = layout;
  await page.getByText(/On 95 of 100 blanks that fit your readings: the largest line angle is/).waitFor();
  await page.getByRole('button', { name: /^Place the guides/ }).click();
  const line = page.getByText(/On \d+ of 100 blanks that fit them, these marks beat the start\./);
  await line.waitFor();
  const [, count] = /On (\d+) of 100/.exec((await line.textContent()) ?? '') ?? [];
  expect(Number(count)).toBeGreaterThan(50);
  await undo().click();
  await page.getByText(/^Placed for this blank, the worst would be/).waitFor();
});

test('how many guides: one fewer, as many and one more, what is beyond a limit marked; one press lays them', async () => {
  const { page } = layout;
  const part = page.getByRole('region', { name: 'How many guides?' });
  await part
    .getByText(/the fewest within your limits|keep your limits|keeps your limits/)
    .waitFor({ timeout: 90_000 });
  const sliders = page.getByRole('slider', { name: /^guide \d/ });
  const own = await sliders.count();
  const heads = part.locator('thead th');
  expect(await heads.allTextContents()).toEqual(
    expect.arrayContaining(['guides', `${own - 1}`, `${own}`, `${own + 1}`]),
  );
  expect(await heads.locator('xpath=self::*[@aria-current]').textContent()).toBe(`${own}`);
  for (const cell of await part
    .getByRole('row', { name: /^line turns most/ })
    .getByRole('cell')
    .all()) {
    const text = (await cell.textContent()) ?? '';
    expect(/over the limit/.test(text)).toBe(Number.parseFloat(text) > 15);
  }
  await part.getByRole('button', { name: `Use ${own + 1}` }).click();
  await expect.poll(() => sliders.count()).toBe(own + 1);
  await undo().click();
  await expect.poll(() => sliders.count()).toBe(own);
  await page.getByText(/^Placed for this blank, the worst would be/).waitFor();
});

test('placing puts in exactly what was promised, in one gesture that undo takes back', async () => {
  const promised = (await layout.page.locator('.headline-judgement').textContent()) ?? '';
  const before = await layout.placeOf(5);
  await layout.page.getByRole('button', { name: 'Place the guides for this blank' }).click();
  await layout.page.getByText('The guides stand as placed for this blank').waitFor();
  // the headline follows the marks as soon as they are read
  const worst = async () => (await layout.worst.textContent())?.toLowerCase() || 'nothing yet';
  await expect.poll(async () => promised.toLowerCase().includes(await worst())).toBe(true);
  await layout.page.getByText('These marks are better than the start.').waitFor();
  expect(await layout.placeOf(5)).not.toBe(before);
  await undo().click();
  await expect.poll(() => layout.placeOf(5)).toBe(before);
  await layout.page.getByRole('button', { name: /^Redo/ }).click();
  await layout.page.getByText('The guides stand as placed for this blank').waitFor();
});

test('the next move: what the headline says is done by one press, and lowers the worst', async () => {
  const { page } = layout;
  await layout.drag(7, -20);
  await layout.settled();
  const dragged = await layout.placeOf(7);
  await page.getByRole('heading', { name: /^Move guide \d+ .* toward the (butt|tip)\.$/ }).waitFor();
  const heading = (await page.locator('.headline-deed').getAttribute('data-text')) ?? '';
  const moved = Number(/^Move guide (\d+)/.exec(heading)?.[1]);
  const before = await layout.placeOf(moved);
  const strained = await worstShare();
  await page.getByRole('button', { name: 'Move it' }).click();
  await expect.poll(() => layout.placeOf(moved)).not.toBe(before);
  await expect.poll(worstShare).toBeLessThan(strained);
  await undo().click();
  await expect.poll(() => layout.placeOf(7)).toBe(dragged);
  await undo().click();
});

describe('a guide', () => {
  beforeAll(() => holdBackDoubts(layout.page));

  test('keeps its place over a reload, and can still be taken back', async () => {
    const place = await layout.placeOf(7);
    await layout.drag(7, -12);
    await layout.settled();
    const moved = await layout.placeOf(7);
    await layout.page.reload();
    await expect.poll(() => layout.placeOf(7)).toBe(moved);
    await undo().click();
    await expect.poll(() => layout.placeOf(7)).toBe(place);
  });
  test('follows the pointer, and everything answers before it is let go', async () => {
    const rod = () => layout.page.locator('.bend-rod').getAttribute('d');
    const { x, y } = await middleOf(layout.guide(6));
    const [place, bent, worst] = [await layout.placeOf(6), await rod(), await layout.worst.textContent()];
    await layout.page.mouse.move(x, y);
    await layout.page.mouse.down();
    await layout.page.mouse.move(x + 48, y, { steps: 6 });
    await expect.poll(() => layout.placeOf(6)).not.toBe(place);
    await expect.poll(rod).not.toBe(bent);
    await expect.poll(() => layout.worst.textContent()).not.toBe(worst);
    await layout.page.keyboard.press('Escape');
    await expect.poll(() => layout.placeOf(6)).toBe(place);
    await layout.page.mouse.up();
  });
  test('is moved by a drag in one gesture, whatever its path', async () => {
    const place = await layout.placeOf(6);
    await layout.drag(6, 18);
    await layout.settled();
    const moved = await layout.placeOf(6);
    expect(moved).not.toBe(place);
    await undo().click();
    await expect.poll(() => layout.placeOf(6)).toBe(place);
    await layout.page.getByRole('button', { name: /^Redo/ }).click();
    await expect.poll(() => layout.placeOf(6)).toBe(moved);
    await undo().click();
  });
  test('steps a sixteenth by arrow and ten by Shift, and says where it stands', async () => {
    const before = inchesIn(await layout.placeOf(4));
    await layout.guide(4).press('ArrowRight');
    await expect.poll(async () => inchesIn(await layout.placeOf(4))).toBeCloseTo(before + 1 / 16, 9);
    await layout.guide(4).press('Shift+ArrowLeft');
    await expect.poll(async () => inchesIn(await layout.placeOf(4))).toBeCloseTo(before - 9 / 16, 9);
    expect(await layout.placeOf(4)).toMatch(
      /^guide 4, .* in from the tip, .* in from guide 3; on .*: .* in from its tip end, .* in from its butt end$/,
    );
    // one gesture where the presses follow closely, two where they do not
    await undo().click();
    await layout.settled();
    if (inchesIn(await layout.placeOf(4)) !== before) await undo().click();
    await expect.poll(async () => inchesIn(await layout.placeOf(4))).toBe(before);
  });
  test('goes to the ends of its slack by Home and End', async () => {
    await layout.page.locator('.ruler-slack rect').nth(8).waitFor();
    const before = inchesIn(await layout.placeOf(9));
    await layout.guide(9).press('Home');
    const home = inchesIn(await layout.placeOf(9));
    expect(home).toBeLessThan(before);
    await layout.guide(9).press('End');
    await expect.poll(async () => inchesIn(await layout.placeOf(9))).toBeGreaterThan(home);
    await undo().click();
  });
  test('cannot cross its neighbour, and says why', async () => {
    await layout.guide(3).focus();
    for (let i = 0; i < 16; i++) await layout.page.keyboard.press('Shift+ArrowLeft');
    await layout.page.getByText(/^Guide 2 is in the way: rings stay/).waitFor();
    expect(inchesIn(await layout.placeOf(3))).toBeGreaterThan(inchesIn(await layout.placeOf(2)) + 1.9);
    await undo().click();
  });
  test('stops at a ferrule and says so; once more steps over it', async () => {
    const { page } = layout;
    const { number, zone, stop } = await walkOntoFerrule();
    expect(zone.from).toBeLessThan(zone.to);
    const before = inchesIn(await layout.placeOf(number));
    expect(before).toBeGreaterThan(zone.to);
    expect(stop).toContain('Press again to jump over it');
    await makeRoomAbove(number, zone.from);
    await layout.guide(number).focus();
    for (let i = 0; i < 2; i++) {
      await page.keyboard.press('Shift+ArrowLeft');
      await page.evaluate(() => new Promise((painted) => requestAnimationFrame(painted)));
    }
    await expect.poll(async () => inchesIn(await layout.placeOf(number))).toBeLessThan(zone.from);
    expect(inchesIn(await layout.placeOf(number))).toBeGreaterThan(
      inchesIn(await layout.placeOf(number - 1)) + 1.9,
    );
  });
  test('stays where it is pinned until it is unpinned', async () => {
    const place = await layout.placeOf(8);
    await layout.guide(8).press('p');
    await layout.page.getByRole('slider', { name: 'guide 8, pinned' }).waitFor();
    await layout.drag(8, 20);
    expect(await layout.placeOf(8)).toBe(place);
    await layout.page.getByText('This guide is pinned.').waitFor();
    await layout.guide(8).press('p');
    await layout.page.getByRole('slider', { name: /^guide 8$/ }).waitFor();
  });
  test('takes a typed mark, in any unit', async () => {
    await layout.page.getByRole('button', { name: /^Type the mark of guide 2/ }).click();
    const field = layout.page.getByRole('textbox', { name: 'Guide 2 from the tip' });
    await field.fill('240 mm');
    await field.press('Enter');
    await expect.poll(() => layout.placeOf(2)).toMatch(/^guide 2, 9 7\/16 in from the tip/);
    await undo().click();
  });
});

test('a chart with a typing slip is named, and the arithmetic rule stands in the meantime', async () => {
  const { page } = layout;
  await page.getByText('chart', { exact: true }).click();
  const list = page.getByLabel('The chart’s marks, typed or pasted');
  await list.fill('4.5 9.7 15.7 22.4 39.8 38 46.9 56.5 66.9 78');
  await list.blur();
  await page.getByText(/Check guide 5: .* is out of step with its neighbours\. About .* would fit/).waitFor();
  await list.fill('4.5 9.7 15.7 22.4 29.8 38 46.9 56.5 66.9 78');
  await list.blur();
  await page.getByText(/^Start \(chart\): guide \d+ at/).waitFor();
  for (let i = 0; i < 3; i++) await undo().click();
});

test('the line as it runs: the reel feels more coming in than going out, and guides on top show where it lies on the blank', async () => {
  // A page of its own: workers made after a driven page was reloaded in the middle of its work took no messages.
  const path = new URL(layout.page.url()).pathname;
  const page = await bench.openPage(path, { viewport: { width: 1440, height: 900 } });
  const part = page.getByRole('region', { name: 'The line as it runs' });
  const friction = part.getByRole('table', { name: 'What the reel feels' });
  await friction.waitFor({ timeout: 60_000 });
  const grams = async (column: number) => {
    const text = (await friction.locator('tbody tr').last().locator('td').nth(column).textContent()) ?? '';
    return Number(/^\d+/.exec(text)?.[0]);
  };
  expect(await grams(0)).toBeGreaterThan(await grams(1));
  const before = await grams(0);
  await part.getByLabel('Friction, at least').fill('0.5');
  await part.getByLabel('Friction, at least').press('Tab');
  await expect.poll(() => grams(0), { timeout: 20_000 }).toBeGreaterThan(before);
  await page.getByText('on top', { exact: true }).click();
  await part
    .getByText(/The line lies on the blank (in one span|in \d+ spans|nowhere, at any load)/)
    .waitFor({ timeout: 60_000 });
  expect(await axeFindings(page)).toEqual([]);
});

describe('on a page of the demo', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.openPage('/builds/demo/layout', { viewport: { width: 390, height: 844 } });
    await page.getByText('Under each load').waitFor();
    await page.locator('.ruler-slack rect').first().waitFor();
  });

  test('axe finds nothing and nothing is cut off', async () => {
    await expectWell(page, everyLook);
  });

  test('a finger drags a guide on a phone', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const touch = await page.context().newCDPSession(page);
    await touch.send('Emulation.setTouchEmulationEnabled', { enabled: true });
    const guide = page.getByRole('slider', { name: /^guide 6/ });
    const before = await guide.getAttribute('aria-valuetext');
    const { x, y } = await middleOf(guide);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', atX?: number) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: atX === undefined ? [] : [{ x: atX, y }],
      });
    await send('touchStart', x);
    for (let i = 1; i <= 6; i++) await send('touchMove', x + 2 * i);
    await send('touchEnd');
    await expect.poll(() => guide.getAttribute('aria-valuetext')).not.toBe(before);
    await page.close();
  });
});

test('switching the units changes no mark', async () => {
  const before = inchesIn(await layout.placeOf(6));
  await layout.page.getByRole('link', { name: 'Settings' }).click();
  await layout.page.getByText('millimetres', { exact: false }).first().click();
  await layout.page.goto(bench.server.address + layout.path);
  await expect.poll(() => layout.placeOf(6)).toMatch(/^guide 6, \d+ mm from the tip/);
  const mm = Number(/(\d+) mm from the tip/.exec(await layout.placeOf(6))?.[1]);
  expect(Math.abs(mm - before * 25.4)).toBeLessThan(1.3);
});

test('nothing was complained of on the way', () => {
  expect(bench.complaints).toEqual([]);
});

/** Steps one guide after another towards the tip, until one is stopped by a ferrule. */
async function walkOntoFerrule() {
  const { page } = layout;
  const stopWords = page.locator('.ruler-stop');
  const count = await page.getByRole('slider', { name: /^guide / }).count();
  for (let number = 2; number <= count; number++) {
    await layout.guide(number).focus();
    const before = await layout.placeOf(number);
    for (let i = 0; i < 60 && (await stopWords.textContent()) === ''; i++) {
      await page.keyboard.press('Shift+ArrowLeft');
      await page.evaluate(() => new Promise((painted) => requestAnimationFrame(painted)));
    }
    const stop = (await stopWords.getAttribute('data-text')) ?? '';
    const [, from, to] = /No guide from (.*?) in to (.*?) in:/.exec(stop)?.map(inchesIn) ?? [];
    if (stop.includes('the ferrule between')) {
      return { number, stop, zone: { from: Number(from), to: Number(to) } };
    }
    await takeBack(number, before);
  }
  throw new Error('no guide is stopped by a ferrule');
}

/** Undoes until the guide stands there: presses that follow closely are one gesture, on a slow computer several. */
async function takeBack(number: number, place: string): Promise<void> {
  for (let i = 0; i < 60 && (await layout.placeOf(number)) !== place; i++) {
    await undo().click();
    await layout.settled();
  }
  expect(await layout.placeOf(number)).toBe(place);
}

/** Steps the guide above towards the tip until two rings' distance is free beyond the ferrule. */
async function makeRoomAbove(number: number, zoneFrom: number): Promise<void> {
  await layout.guide(number - 1).focus();
  for (let i = 0; i < 10 && inchesIn(await layout.placeOf(number - 1)) + 2.5 > zoneFrom; i++) {
    const before = await layout.placeOf(number - 1);
    await layout.page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => layout.placeOf(number - 1)).not.toBe(before);
  }
}

/** The first length in inches in a text, behind the guide's own number: `22 1/8` is 22.125. */
function inchesIn(text: string): number {
  const [, whole = '0', above = '0', below = '1'] =
    /(\d+)(?: (\d+)\/(\d+))?(?= in|$)/.exec(text.replace(/^guide \d+, /, '')) ?? [];
  return Number(whole) + Number(above) / Number(below);
}
