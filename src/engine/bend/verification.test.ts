import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { passes } from '../../../reference/cases/check.ts';
import { calculixGroup, scipyGroup } from '../../../reference/live/groups.ts';
import { reportText } from '../../../reference/report/report-text.ts';
import { allGroups, writeReport } from '../../../reference/verify.ts';

const groups = allGroups(false);
const path = process.env.PATH;
const folders: string[] = [];
afterEach(() => {
  process.env.PATH = path;
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

test('every check of the report that needs nothing installed passes', () => {
  const folder = mkdtempSync(join(tmpdir(), 'verify-'));
  folders.push(folder);
  const { failed, notRun } = writeReport(groups, folder);
  expect(failed).toBe(0);
  expect(notRun).toHaveLength(5);
  const text = readFileSync(join(folder, 'verification.md'), 'utf8');
  expect(text.match(/\| pass \|$/gm)!.length).toBeGreaterThan(600);
  expect(readFileSync(join(folder, 'figures', 'verification-errors.svg'), 'utf8')).toContain('not run');
});

test('where a program is missing its rows are not run, and never passed', () => {
  process.env.PATH = '';
  for (const group of [calculixGroup([]), scipyGroup([])]) {
    // a machine may keep its Python in a fixed place; CalculiX is found by PATH alone
    if (!('notRun' in group)) continue;
    const section = reportText([group]);
    expect(section).toContain('**not run**');
    expect(section).not.toMatch(/\| pass|all pass/);
  }
  expect(calculixGroup([])).toHaveProperty('notRun');
});

test('a number that is off, or missing, fails and is shown as failed', () => {
  const check = { id: 'a', quantity: 'q', source: 's', unit: '1', ours: 1.1, theirs: 1, allowance: 0.05 };
  for (const ours of [1.1, Number.NaN]) {
    const group = { title: 't', about: '', checks: [{ ...check, ours }] };
    expect(passes(group.checks[0])).toBe(false);
    expect(reportText([group])).toContain('**FAIL**');
    expect(reportText([group])).toContain('**1 fail**');
  }
});

test('the page in docs holds the checks that are run today', () => {
  const page = readFileSync('docs/verification.md', 'utf8');
  for (const group of groups) {
    expect(page).toContain(`## ${group.title}\n`);
    if ('checks' in group) for (const { id } of group.checks) expect(page).toContain(`| ${id.slice(0, 100)}`);
  }
  expect(page).not.toContain('**FAIL**');
});
