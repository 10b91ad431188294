import { type Check, passes } from '../cases/check.ts';
import type { LiveGroup } from '../live/groups.ts';

/** The verification page. No date and no times: it changes only when a result does. */
export function reportText(groups: readonly LiveGroup[]): string {
  return `${[
    '# Verification',
    '',
    'Written by `npm run verify`: do not edit. Every row sets a number of ours beside one that Fairbend did not make.',
    'Where the other numbers come from, and what was only recomputed: [reference/README.md](../reference/README.md).',
    'The equations: [theory-bend.md](theory-bend.md).',
    '',
    ...summary(groups),
    '',
    '![Six invented rods, unloaded and bent](figures/bend-shapes.svg)',
    '',
    '![Error of every row as a share of its allowance](figures/verification-errors.svg)',
    ...groups.flatMap(section),
  ].join('\n')}\n`;
}

function summary(groups: readonly LiveGroup[]): string[] {
  const rows = groups.map((group) => {
    if ('notRun' in group) return `| ${group.title} | | | **not run**: ${group.notRun} |`;
    const failed = group.checks.filter((check) => !passes(check)).length;
    const worst = Math.max(...group.checks.map(shareOfAllowance));
    const result = failed === 0 ? 'all pass' : `**${failed} fail**`;
    return `| ${group.title} | ${group.checks.length} | ${worst.toPrecision(2)} | ${result} |`;
  });
  return ['| checks | rows | largest error / allowance | result |', '|---|---|---|---|', ...rows];
}

export function shareOfAllowance(check: Check): number {
  return Math.abs(check.ours - check.theirs) / check.allowance;
}

function section(group: LiveGroup): string[] {
  if ('notRun' in group) return ['', `## ${group.title}`, '', `Not run: ${group.notRun}.`];
  const sources = [...new Set(group.checks.map((check) => check.source))];
  return [
    '',
    `## ${group.title}`,
    '',
    group.about,
    '',
    ...sources.map((source, i) => `${i + 1}. ${source}`),
    '',
    '| case | quantity | source | ours | theirs | error | allowance | |',
    '|---|---|---|---|---|---|---|---|',
    ...group.checks.map((check) => row(check, sources.indexOf(check.source) + 1)),
  ];
}

function row(check: Check, source: number): string {
  const error = Math.abs(check.ours - check.theirs);
  const cells = [
    cell(check.id),
    cell(`${check.quantity}${check.unit === '1' ? '' : `, ${check.unit}`}`),
    source,
    number(check.ours),
    number(check.theirs),
    error.toExponential(1),
    check.allowance.toExponential(1),
    passes(check) ? 'pass' : '**FAIL**',
  ];
  return `| ${cells.join(' | ')} |`;
}

/** Short enough for a table; a bar would end the cell. */
function cell(text: string): string {
  const short = text.length > 110 ? `${text.slice(0, 107)}...` : text;
  return short.replaceAll('|', '\\|');
}

/** Nine digits: the last bits of sin and cos differ between JavaScript engines. */
function number(value: number): string {
  return String(Number(value.toPrecision(9)));
}
