import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { inRoot, say } from './root.mjs';

/**
 * Runs `work` while no other boot of this folder installs or builds; making a folder is the one atomic step.
 * A lock whose process is gone counts for nothing.
 */
export async function withLock(work, folder = inRoot('.stamp', 'lock')) {
  for (let tries = 0; !take(folder); tries++) {
    if (abandoned(folder)) rmSync(folder, { recursive: true, force: true });
    if (tries === 10) say('Waiting for another Fairbend command that is installing or building …');
    await wait(200);
  }
  try {
    return await work();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function take(folder) {
  mkdirSync(dirname(folder), { recursive: true });
  try {
    mkdirSync(folder);
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
  writeFileSync(join(folder, 'pid'), String(process.pid));
  return true;
}

/** How long a process may take between making the folder and writing its pid. */
const pidWrittenWithinMs = 5000;

function abandoned(folder) {
  try {
    const pid = Number(readFileSync(join(folder, 'pid'), 'utf8'));
    if (pid > 0) process.kill(pid, 0);
    return false;
  } catch (error) {
    return error.code === 'ESRCH' || (error.code === 'ENOENT' && olderThan(folder, pidWrittenWithinMs));
  }
}

function olderThan(folder, ms) {
  try {
    return Date.now() - statSync(folder).mtimeMs > ms;
  } catch {
    return false;
  }
}
