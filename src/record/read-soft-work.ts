import type { SoftWork } from '../engine/plan/bend-gate.ts';
import type { DocumentState } from './operation.ts';
import { readFinish } from './read-finish.ts';
import { readSingle } from './read-values.ts';

/** What was glued and brushed on, and how long each is soft. */
export function readSoftWork(state: DocumentState): SoftWork {
  const row = readSingle(state, 'handle');
  const { coats, times } = readFinish(state);
  const instant = (field: string) => {
    const atMs = Date.parse(row.text(field) ?? '');
    return Number.isNaN(atMs) ? undefined : atMs;
  };
  return {
    handleGluedAtMs: instant('gluedAt'),
    tipTopGluedAtMs: instant('tipTopGluedAt'),
    glueCureS: row.orUsual('glueCure'),
    coats,
    times,
  };
}
