import './boot/check-node.mjs';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureBuilt } from './boot/build.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run manual -- [options]
  --only NAME  one picture
  --help       this
Takes the pictures of docs/manual from the running demo. Needs a Chromium (CHROME names its file).`;

/** Half seconds; above the await, which a constant below would not be known to. */
const quietFor = 6;

await orExplain(async () => {
  const { values } = parseArgs({ options: { only: { type: 'string' }, help: { type: 'boolean' } } });
  if (values.help) return console.log(help);
  await ensureInstalled();
  await ensureBuilt();
  const { serve } = await import(new URL('../dist/server/serve.js', import.meta.url));
  const dataFolder = mkdtempSync(join(tmpdir(), 'fairbend-manual-'));
  const server = await serve({ dataFolder, port: 0 });
  try {
    await takePictures(server.address, values.only);
  } finally {
    await server.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
});

async function takePictures(address, only) {
  const { chromium } = await import('playwright-core');
  const { decode } = await import('fast-png');
  const { pictures } = await import('./manual/pictures.mjs');
  const { smallPng } = await import('./manual/small-png.mjs');
  const browser = await chromium.launch({ executablePath: chromeFile(), args: chromeArguments() });
  const folder = inRoot('docs', 'manual', 'pictures');
  mkdirSync(folder, { recursive: true });
  for (const { name, at, width = 900, height = 620, before } of pictures) {
    if (only && only !== name) continue;
    const page = await browser.newPage({
      viewport: { width, height },
      colorScheme: 'light',
      locale: 'en-US',
    });
    await page.goto(address + at);
    await page.locator('main').waitFor();
    await page.waitForTimeout(1500);
    await isSettled(page).catch(() => say(`${name}: taken before all was worked out`));
    await (before ?? toNextLine)(page);
    await page.waitForTimeout(500);
    const png = smallPng(decode(await page.screenshot()));
    writeFileSync(join(folder, `${name}.png`), png);
    say(`${name}.png  ${Math.round(png.length / 1000)} kB`);
    await page.close();
  }
  await browser.close();
}

/** What stands above it is the same on every sheet. */
async function toNextLine(page) {
  const line = page.locator('.next-line').first();
  if ((await line.count()) > 0) await line.evaluate((element) => scrollTo(0, element.offsetTop - 12));
}

/** Nothing on the sheet has been worked out for a while: one task may begin where another ends. */
async function isSettled(page) {
  const working = page
    .getByText(/^(Working|Laying|Trying|Bending) |being worked out/)
    .locator('visible=true');
  let quiet = 0;
  for (let wait = 0; quiet < quietFor; wait++) {
    if (wait > 720) throw new Error('still working');
    await page.waitForTimeout(500);
    quiet = (await working.count()) > 0 ? 0 : quiet + 1;
  }
}
function chromeFile() {
  const known = [process.env.CHROME, '/usr/bin/chromium', '/usr/bin/google-chrome'];
  const found = known.find((file) => file && existsSync(file));
  if (!found) throw new Error('No Chromium was found. Set CHROME to its file.');
  return found;
}

function chromeArguments() {
  const quiet = [
    '--headless',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
  ];
  const alone = ['--disable-component-update', '--disable-sync'];
  // Chromium refuses its sandbox to root, which is who runs a container.
  return [...quiet, ...alone, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])];
}
