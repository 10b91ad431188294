import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { inRoot, say } from './root.mjs';

const folder = inRoot('.stamp', 'lock');

/** Runs `work` while no other boot of this folder installs or builds; making a folder is the one atomic step. */
export async function withLock(work) {
  for (let tries = 0; !take(); tries++) {
    if (abandoned()) rmSync(folder, { recursive: true, force: true });
    if (tries === 10) say('Waiting for another Fairbend command that is installing or building …');
    await wait(200);
  }
  try {
    return await work();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function take() {
  mkdirSync(inRoot('.stamp'), { recursive: true });
  try {
    mkdirSync(folder);
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
  writeFileSync(inRoot('.stamp', 'lock', 'pid'), String(process.pid));
  return true;
}

/** The process that made it is gone. A lock whose pid is not written yet is a moment old. */
function abandoned() {
  try {
    const pid = Number(readFileSync(inRoot('.stamp', 'lock', 'pid'), 'utf8'));
    if (pid > 0) process.kill(pid, 0);
    return false;
  } catch (error) {
    return error.code === 'ESRCH';
  }
}
