import type { Due } from '../engine/finish/schedule.ts';
import type { BendGate } from '../engine/plan/bend-gate.ts';

export const dueWords: Record<Due, string> = {
  'brushing-ends': 'Stop brushing: the pot life is over',
  'stop-turning': 'You may stop turning',
  'recoat-from': 'You may recoat',
  'recoat-until': 'The recoat window is over: scuff first',
  flex: 'You may bend it',
  fish: 'You may fish it',
};

/** What is only told: nothing spoils while it is not heard. */
export const isCalm = (due: Due): boolean => due === 'flex' || due === 'fish';

/** What is still soft: `coat 2`, `the handle’s glue`. */
export function softInWords({ soft }: BendGate): string {
  return typeof soft === 'number' ? `coat ${soft}` : `the ${soft}’s glue`;
}
