/**
 * One section turned on the bench, row by row as it was read. Angles are places round the section: 0 at the
 * builder's reference mark, a row's angle is the place that faces down, towards the weight.
 */

import type { Finding } from '../finding.ts';
import type { RotationAnswer, RotationRequest } from './request.ts';
import { rotation } from './rotation.ts';
import { rotationFound } from './rotation-kinds.ts';

export interface TurnedSection {
  /** Row of the record. */
  id: string;
  sectionId: string;
  /** On two supports with the sag at mid-span read, or clamped with the drop of its tip. */
  held: 'span' | 'clamp';
  /** The heavier one is missing until it is given. */
  loadsKg: readonly [number, number | undefined];
  sigmaM: number;
  turns: readonly Turn[];
}
export interface Turn {
  id: string;
  turnRad?: number;
  dropsM: readonly [number | undefined, number | undefined];
}
export interface TurnedReading {
  /** Rows read under both loads, and rows there are. */
  read: number;
  rows: number;
  /** Undefined until enough rows are read. */
  request?: RotationRequest;
  answer?: RotationAnswer;
  /** At the record's paths. */
  findings: Finding[];
}

/** Below this the readings do not tell bow from stiffness. */
const fewestTurns = 4;

export function readTurned(section: TurnedSection): TurnedReading {
  const { loadsKg, sigmaM, turns } = section;
  const complete = turns.flatMap(({ id, turnRad, dropsM: [a, b] }) =>
    turnRad === undefined || a === undefined || b === undefined
      ? []
      : [{ id, turnRad, dropsM: [a, b] as const }],
  );
  const counts = { read: complete.length, rows: turns.length };
  const [lightKg, heavyKg] = loadsKg;
  if (complete.length < fewestTurns) return { ...counts, findings: [] };
  if (heavyKg === undefined) {
    const path = `turnings/${section.id}/loadB`;
    return { ...counts, findings: [rotationFound(path, 'rotation/second-load-unsaid', {})] };
  }
  const request = { loadsKg: [lightKg, heavyKg] as const, sigmaM, readings: complete };
  const answer = rotation({
    ...request,
    readings: complete.map(({ turnRad, dropsM }) => ({ turnRad, dropsM })),
  });
  const findings = answer.findings.map((found) => ({
    ...found,
    path: recordPlace(section.id, found.path, complete),
  }));
  return { ...counts, request, answer, findings };
}

function recordPlace(id: string, path: string, rows: readonly { id: string }[]): string {
  const drop = /^readings\[(\d+)\]\.dropsM\[(\d)\]$/.exec(path);
  if (drop) return `turnReadings/${rows[Number(drop[1])].id}/${drop[2] === '0' ? 'dropA' : 'dropB'}`;
  const turn = /^readings\[(\d+)\]/.exec(path);
  if (turn) return `turnReadings/${rows[Number(turn[1])].id}/turn`;
  return `turnings/${id}/${path.startsWith('sigma') ? 'sigma' : 'loadB'}`;
}
