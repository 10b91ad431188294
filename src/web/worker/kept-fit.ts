import { type FitResult, fitStiffness } from '../../engine/stiffness/fit.ts';
import type { FitRequest } from '../../engine/stiffness/request.ts';

let kept: { text: string; result: FitResult } | undefined;

/** Marks change more often than readings: the last fit is kept. */
export function keptFit(request: FitRequest): FitResult {
  const text = JSON.stringify(request);
  if (kept?.text !== text) kept = { text, result: fitStiffness(request) };
  return kept.result;
}
