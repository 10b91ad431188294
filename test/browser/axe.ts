import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const standards = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface AxeFinding {
  id: string;
  help: string;
  nodes: { html: string }[];
}

/** What axe-core finds against WCAG 2.2 AA and good practice on the page as it stands, a line each. */
export function axeFindings(page: Page): Promise<string[]> {
  return findings(page, { type: 'tag', values: standards });
}

/** Of these what another ink can change: the rest was looked at in the other scheme, at the same width. */
export function axeContrast(page: Page): Promise<string[]> {
  return findings(page, { type: 'rule', values: ['color-contrast', 'link-in-text-block'] });
}

async function findings(page: Page, runOnly: { type: string; values: string[] }): Promise<string[]> {
  if (await page.evaluate('typeof axe === "undefined"')) await page.evaluate(source);
  const violations = await page.evaluate(async (only): Promise<AxeFinding[]> => {
    const { axe } = globalThis as unknown as {
      axe: { run(where: Document, options: unknown): Promise<{ violations: AxeFinding[] }> };
    };
    const result = await axe.run(document, { runOnly: only, resultTypes: ['violations'] });
    return result.violations.map(({ id, help, nodes }) => ({
      id,
      help,
      nodes: nodes.map(({ html }) => ({ html })),
    }));
  }, runOnly);
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html.slice(0, 200)} (${nodes.length})`,
  );
}
