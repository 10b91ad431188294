import type { StandingMarks } from '../engine/flow/standing-marks.ts';

/** Which marks the figures are for. */
export function standingMarksInWords(are: StandingMarks['are']): string {
  const whose = { own: 'at your marks', start: 'at the start’s marks', spread: 'at even spacing' };
  return are === 'own' ? whose.own : `${whose[are]}; you have none of your own yet`;
}
