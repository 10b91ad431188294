/** How many of each kind are kept. */
export interface Keeping {
  /** The newest, however close together: a good one of this morning outlives a start after the mishap. */
  recent: number;
  daily: number;
  weekly: number;
  monthly: number;
}

export const usualKeeping: Keeping = { recent: 5, daily: 7, weekly: 8, monthly: 12 };

/**
 * Which backups to keep: the newest few, and of the latest days, weeks and months that have any, the newest of each.
 * @param made instants in UTC, ISO 8601, any order
 */
export function backupsToKeep(made: readonly string[], keeping: Keeping = usualKeeping): Set<string> {
  const newestFirst = [...made].sort().reverse();
  const kinds: [number, (instant: string) => string][] = [
    [keeping.daily, (instant) => instant.slice(0, 10)],
    [keeping.weekly, mondayOf],
    [keeping.monthly, (instant) => instant.slice(0, 7)],
  ];
  const kept = new Set(newestFirst.slice(0, keeping.recent));
  for (const [most, periodOf] of kinds) {
    const periods = new Map<string, string>();
    for (const instant of newestFirst)
      if (!periods.has(periodOf(instant))) periods.set(periodOf(instant), instant);
    for (const instant of [...periods.values()].slice(0, most)) kept.add(instant);
  }
  return kept;
}

function mondayOf(instant: string): string {
  const day = new Date(`${instant.slice(0, 10)}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() - ((day.getUTCDay() + 6) % 7));
  return day.toISOString().slice(0, 10);
}

const dayMs = 24 * 3600 * 1000;

/**
 * Which one may go now that one more is made: never more than one, so there are never fewer than before. Those whose
 * instant is still to come were made while the clock was wrong; they neither go nor stand for a day.
 */
export function backupToDrop(
  made: readonly string[],
  justMade: string,
  now: Date,
  keeping: Keeping = usualKeeping,
): string | undefined {
  const believed = made.filter((instant) => Date.parse(instant) <= now.getTime() + dayMs);
  const kept = backupsToKeep(believed, keeping);
  return believed.sort().find((instant) => !kept.has(instant) && instant !== justMade);
}
