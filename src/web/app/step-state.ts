import type { BenchReading } from '../read/bench.tsx';

/** What a step still waits for; undefined when it can be worked on. */
export function waitsFor(step: string, { bench, choices, profile }: BenchReading): string | undefined {
  if (step !== 'layout' && step !== 'marks') return undefined;
  if (!bench || bench.sections.length === 0) return 'needs the sections';
  if (profile.length === 0) return 'needs a diameter';
  const placed = choices?.guides.every(({ stationM }) => stationM !== undefined) ?? false;
  return step === 'marks' && !placed ? 'needs a layout' : undefined;
}
