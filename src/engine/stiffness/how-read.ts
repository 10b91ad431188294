import type { FitClampSetup, FitRequest, FitSetup } from './request.ts';

/**
 * What told of the stiffness beside callipers and scale. 'one-hold': drops with the clamp in one place, or swings; 'more':
 * the clamp in a second place, a stretch on two supports, or a photograph, which shows the whole bend.
 */
export type HowRead = 'nothing' | 'one-hold' | 'more';

export function howRead({ blank, setups }: FitRequest): HowRead {
  const read = setups.filter(wasRead);
  const clamps = read.filter(isClamped).map(({ clampFromTipM = blank.lengthM }) => clampFromTipM);
  if (clamps.length < read.length) return 'more';
  if (clamps.length === 0) return (blank.swings ?? []).length > 0 ? 'one-hold' : 'nothing';
  return clamps.every((at) => isSameHold(at, clamps[0], blank.lengthM)) ? 'one-hold' : 'more';
}

/** Clamps nearer to each other than a tenth of the blank see much the same of it (a judgement). */
export function isSameHold(aFromTipM: number, bFromTipM: number, lengthM: number): boolean {
  return Math.abs(aFromTipM - bFromTipM) < 0.1 * lengthM;
}

export function isClamped(setup: FitSetup): setup is FitClampSetup {
  return setup.kind === undefined || setup.kind === 'clamp';
}

function wasRead(setup: FitSetup): boolean {
  return isClamped(setup) ? setup.tests.some(({ readings }) => readings.length > 0) : setup.tests.length > 0;
}
