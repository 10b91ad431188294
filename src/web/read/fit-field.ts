import type { Bench } from '../../engine/bench/bench.ts';
import { type FitRows, recordPath } from '../../engine/stiffness/from-bench.ts';

/** The record's field for what the fit finds odd: a whole test is named at its weight, a set-up at its blocks. */
export function fitField(path: string, rows: readonly FitRows[], bench: Bench): string {
  const section = /^blank\.sections\[(\d+)\]\.(massKg|balanceFromTipM)$/.exec(path);
  if (section) {
    const [, index, field] = section;
    return `sections/${bench.sections[Number(index)]?.id}/${field === 'massKg' ? 'mass' : 'balanceFromOwnTip'}`;
  }
  if (path === 'blank.massKg') return 'blank/-/mass';
  const row = recordPath(rows, path);
  if (/^tests\/[^/]+$/.test(row)) return `${row}/hung`;
  return /^setups\/[^/]+$/.test(row) ? `${row}/clampFromTip` : row;
}
