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

/** What another ink can change, and nothing else does. */
const ink = ['color-contrast', 'link-in-text-block'];
const rulesOf = {
  all: { runOnly: { type: 'tag', values: standards } },
  ink: { runOnly: { type: 'rule', values: ink } },
};
type AxeRules = keyof typeof rulesOf;

/** What axe-core finds against WCAG 2.2 AA and good practice on the page as it stands, a line each. */
export async function axeFindings(page: Page, which: AxeRules = 'all'): Promise<string[]> {
  if (await page.evaluate('typeof axe === "undefined"')) await page.evaluate(source);
  const violations = await page.evaluate(async (rules): Promise<AxeFinding[]> => {
    const { axe } = globalThis as unknown as {
      axe: { run(where: Document, options: unknown): Promise<{ violations: AxeFinding[] }> };
    };
    const result = await axe.run(document, { ...rules, resultTypes: ['violations'] });
    return result.violations.map(({ id, help, nodes }) => ({
      id,
      help,
      nodes: nodes.map(({ html }) => ({ html })),
    }));
  }, rulesOf[which]);
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html.slice(0, 200)} (${nodes.length})`,
  );
}
