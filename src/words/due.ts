import type { Due } from '../engine/finish/schedule.ts';

export const dueWords: Record<Due, string> = {
  'brushing ends': 'Stop brushing from this batch',
  'stop turning': 'Turning may stop',
  'recoat from': 'Recoat from now',
  'recoat until': 'Recoat window closes; scuff first after it',
  flex: 'May be bent',
  fish: 'May be fished',
};

/** `Tue 14:20`, by the device's own clock. */
export function clockWords(atMs: number): string {
  return new Date(atMs).toLocaleString(undefined, { weekday: 'short', hour: '2-digit', minute: '2-digit' });
}

/** `6 h`, `20 min`, `5 d`. */
export function spanWords(seconds: number): string {
  if (seconds < 5400) return `${Math.round(seconds / 60)} min`;
  if (seconds < 172_800) return `${Number((seconds / 3600).toFixed(1))} h`;
  return `${Number((seconds / 86_400).toFixed(1))} d`;
}
