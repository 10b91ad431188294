import { setTimeout as wait } from 'node:timers/promises';
import type { JobStatus } from '../../src/record/record-api.ts';

/** The series the demo's blank is put into. */
export const learn = { kind: 'learn series', input: { series: 'Invented 9 ft' } };

/** A route of a running server; with a body it is a POST. */
export async function ask(address: string, path: string, body?: unknown): Promise<JobStatus> {
  const headers = { 'content-type': 'application/json' };
  const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
  const response = await fetch(address + path, init);
  if (!response.ok) throw new Error(await response.text());
  return (await response.json()) as JobStatus;
}

export function nameSeries(address: string): Promise<unknown> {
  const operation = {
    id: 'd1-a.900000.0',
    device: 'd1-a',
    clock: 900_000,
    gesture: 'series',
    path: ['blank', '-', 'series'],
    old: null,
    value: learn.input.series,
    at: '2026-03-01T09:00:00Z',
  };
  return ask(address, '/api/documents/demo/operations', { operations: [operation] });
}

/** Looks, leaving the processor to the work, until it is so. @throws Error once the job has ended otherwise */
export async function lookUntil(
  address: string,
  id: string,
  wanted: (job: JobStatus) => boolean,
): Promise<JobStatus> {
  for (;;) {
    const job = await ask(address, `/api/jobs/${id}`);
    if (wanted(job)) return job;
    if (!['waiting', 'running'].includes(job.state)) throw new Error(JSON.stringify(job));
    await wait(25);
  }
}
