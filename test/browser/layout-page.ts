import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { Bench } from './open-bench.ts';
import { addFile } from './open-step.ts';

/** The Layout step of the demo's blank before a layout is chosen, and what the tests take hold of on it. */
export interface LayoutPage {
  page: Page;
  path: string;
  worst: Locator;
  guide(number: number): Locator;
  /** What the guide's slider says of its place. */
  placeOf(number: number): Promise<string>;
  /** Drags a guide by pixels, in steps, and leaves it there. */
  drag(number: number, byPx: number): Promise<void>;
  settled(): Promise<void>;
}

export async function openLayout(bench: Bench): Promise<LayoutPage> {
  const path = `/builds/${await addUnplacedDemo(bench)}/layout`;
  const page = await bench.openPage(path, { viewport: { width: 1440, height: 1100 } });
  page.setDefaultTimeout(20_000);
  const worst = page.locator('.headline-worst');
  const guide = (number: number) => page.getByRole('slider', { name: new RegExp(`^guide ${number}(,|$)`) });
  const layout: LayoutPage = {
    page,
    path,
    worst,
    guide,
    placeOf: async (number) => ((await guide(number).getAttribute('aria-valuetext')) ?? '').split('. ')[0],
    async drag(number, byPx) {
      const { x, y } = await middleOf(guide(number));
      const ruler = await page.locator('.ruler svg').first().boundingBox();
      // distances are told for a rod drawn 860 px long
      const alongPx = byPx * ((ruler?.width ?? 860) / 860);
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + alongPx, y, { steps: 8 });
      await page.mouse.up();
    },
    settled: () => page.getByText('every change is on the disk').waitFor(),
  };
  await page.getByRole('button', { name: /^Place the guides/, disabled: false }).waitFor();
  return layout;
}

/** A build of the builder's own with the demo's bench and without its guides; the id it was given. */
function addUnplacedDemo(bench: Bench): Promise<string> {
  const file = JSON.parse(
    readFileSync(new URL('../../examples/demo-build.json', import.meta.url), 'utf8'),
  ) as { build: Record<string, unknown> & { about: Record<string, unknown> } };
  const { guides: _, ...build } = file.build;
  const { demo: __, ...about } = build.about;
  return addFile(bench, JSON.stringify({ ...file, build: { ...build, about } }));
}

/**
 * From the next load on, what says how sure the sheet is never answers on this page, as on a very slow computer: else
 * every one of many moves would set it going anew, and what is looked at here does not wait for it.
 */
export async function holdBackDoubts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const Engine = Worker;
    globalThis.Worker = class extends Engine {
      private readonly held: boolean;
      constructor(from: string | URL, options?: WorkerOptions) {
        super(from, options);
        this.held = options?.name === 'fairbend doubt';
      }
      override postMessage(message: unknown): void {
        if (!this.held) super.postMessage(message);
      }
    };
  });
}

/** The upper part of a guide's mark, where its number stands. */
export async function middleOf(guide: Locator): Promise<{ x: number; y: number }> {
  await guide.scrollIntoViewIfNeeded();
  const mark = await guide.locator('.ruler-mark').boundingBox();
  if (!mark) throw new Error('the guide is not on the screen');
  return { x: mark.x + mark.width / 2, y: mark.y + 4 };
}
