/** Runs the independent computations of reference/scipy from the project's root. */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import type { BendRequest } from '../../src/engine/bend/bend.ts';
import type { SpoolRequest } from '../../src/engine/spool/spool-request.ts';

export interface ScipyBend {
  status: 'converged' | 'failed';
  reason?: string;
  points: { fromTipM: number; xM: number; yM: number; angleRad: number }[];
  rings: { xM: number; yM: number }[];
  residual: number;
  nodes: number;
  /** Time inside solve_bvp, the load steps included. */
  seconds: number;
}

export interface ScipyRequest extends BendRequest {
  /** Relative residual that solve_bvp must reach. */
  tolerance: number;
}

/** The first Python that has scipy: the Debian package belongs to the system's own Python. */
export function pythonWithScipy(): string | undefined {
  const candidates = ['python3', '/usr/bin/python3'];
  return candidates.find((python) => spawnSync(python, ['-c', 'import scipy.integrate']).status === 0);
}

export function scipyVersion(python: string): string {
  const { stdout } = spawnSync(python, ['-c', 'import scipy; print(scipy.__version__)'], {
    encoding: 'utf8',
  });
  return stdout.trim();
}

export function scipyBends(python: string, requests: readonly ScipyRequest[]): ScipyBend[] {
  return scipyLines<ScipyBend>(python, 'rod_bvp.py', requests);
}

export interface ScipySpool {
  least: number;
  largest: number;
  clearanceM: number;
  axisMeetsFromTipM: number | null;
  insideNeededM: number[];
}

/** Runs scipy/spool_fan.py: the fan as vectors in space, its extremes by search. */
export function scipySpools(python: string, requests: readonly SpoolRequest[]): ScipySpool[] {
  return scipyLines<ScipySpool>(python, 'spool_fan.py', requests);
}

/** One JSON request a line in, one JSON answer a line out. */
function scipyLines<Answer>(python: string, script: string, requests: readonly object[]): Answer[] {
  if (requests.length === 0) return [];
  const run = spawnSync(python, [resolve('reference', 'scipy', script)], {
    input: `${requests.map((request) => JSON.stringify(request)).join('\n')}\n`,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 300_000,
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  });
  if (run.status !== 0) throw new Error(`${script} ended with ${run.status}: ${run.stderr}`);
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Answer);
}
