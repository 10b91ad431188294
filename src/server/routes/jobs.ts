import { Hono } from 'hono';
import { z } from 'zod';
import { NotFoundError } from '../errors.ts';
import type { Jobs } from '../jobs/jobs.ts';
import { readJson } from './read-body.ts';

const jobRequest = z.strictObject({ kind: z.string().max(100), input: z.unknown().optional() });
const largestRequest = 1024 ** 2;

/** Long computations: begun, looked at, called off. */
export function jobRoutes(jobs: Jobs): Hono {
  const app = new Hono();
  app.get('/jobs', async (c) => c.json({ jobs: await jobs.list() }));
  app.post('/jobs', async (c) => {
    const { kind, input = {} } = await readJson(c, jobRequest, largestRequest);
    return c.json(await jobs.start(kind, input), 202);
  });
  app.get('/jobs/:id', async (c) => {
    const found = await jobs.status(c.req.param('id'));
    if (!found) throw new NotFoundError('There is no such job. Load the page again');
    return c.json(found);
  });
  app.post('/jobs/:id/cancel', async (c) => c.json(await jobs.cancel(c.req.param('id'))));
  return app;
}
