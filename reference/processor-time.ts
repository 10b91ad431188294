/** Processor time of processes as Linux counts it (proc(5): /proc/PID/stat, fields 14 to 17, in ticks of 10 ms). */
import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';

const msPerTick = 10;

/** Of these processes with all their threads; undefined where the system does not tell. */
export function processorMs(pids: readonly number[]): number | undefined {
  const each = pids.map((pid) => ticksOf(pid, false));
  if (each.includes(undefined)) return undefined;
  return each.reduce<number>((sum, ticks) => sum + ticks!, 0) * msPerTick;
}

/** Of a process and those it has started, the ended ones too, as a database server starts one a connection. */
export function processorMsOfFamily(pid: number): number | undefined {
  const own = ticksOf(pid, true);
  if (own === undefined) return undefined;
  const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(/\s+/).map(Number);
  // One that ends between the two looks is counted with its parent's ended ones at the next.
  return children.reduce((sum, child) => sum + (ticksOf(child, true) ?? 0), own) * msPerTick;
}

/** Processes that want a processor, on average over the last minute; times measured beside others mislead. */
export function loadAverage(): number {
  return loadavg()[0];
}

function ticksOf(pid: number, withEnded: boolean): number | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // The name of the program, in brackets, may hold anything; what follows it is numbers from field 3 on.
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    const [user, system, endedUser, endedSystem] = fields.slice(11, 15).map(Number);
    return user + system + (withEnded ? endedUser + endedSystem : 0);
  } catch {
    return undefined;
  }
}
