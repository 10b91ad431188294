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
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(source);
  const violations = await page.evaluate(async (tags): Promise<AxeFinding[]> => {
    const { axe } = globalThis as unknown as {
      axe: { run(where: Document, options: unknown): Promise<{ violations: AxeFinding[] }> };
    };
    const result = await axe.run(document, { runOnly: { type: 'tag', values: tags } });
    return result.violations.map(({ id, help, nodes }) => ({
      id,
      help,
      nodes: nodes.map(({ html }) => ({ html })),
    }));
  }, standards);
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html.slice(0, 200)} (${nodes.length})`,
  );
}
