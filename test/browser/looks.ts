import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeFindings } from './axe.ts';

/** How a page is looked at. */
export type Look = readonly [widthPx: number, scheme: 'light' | 'dark'];

/** Three widths by day, the outer two by night. */
export const everyLook: readonly Look[] = [
  [390, 'light'],
  [820, 'light'],
  [1440, 'light'],
  [390, 'dark'],
  [1440, 'dark'],
];
/** A telephone and a screen by day; the width between by night. */
export const usualLooks: readonly Look[] = [
  [390, 'light'],
  [1440, 'light'],
  [820, 'dark'],
];

/**
 * At each look axe finds nothing, nothing is wider than the screen, and what is asked `also` holds. Every rule is tried
 * at each width; in another scheme at the same width those that its ink decides.
 */
export async function expectWell(
  page: Page,
  looks: readonly Look[] = usualLooks,
  also: (...look: Look) => Promise<void> = async () => undefined,
): Promise<void> {
  const widths = new Set<number>();
  for (const [width, scheme] of looks) {
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width, height: 900 });
    const at = `at ${width} px, ${scheme}`;
    const rules = widths.has(width) ? 'ink' : 'all';
    widths.add(width);
    expect(await axeFindings(page, rules), at).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      at,
    ).toBeLessThanOrEqual(0);
    await also(width, scheme);
    if (process.env.SHOTS) await shoot(page, `${width}-${scheme}`);
  }
}

/** For the eye, into the folder SHOTS, under the test's own name. */
async function shoot(page: Page, look: string): Promise<void> {
  const test = (expect.getState().currentTestName ?? 'page').replace(/\W+/g, '-');
  await page.screenshot({ path: `${process.env.SHOTS}/${test}-${look}.png`, fullPage: true });
}
