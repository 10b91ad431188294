import { Hono } from 'hono';
import type { RecordCare } from '../care/record-care.ts';
import { NotFoundError } from '../errors.ts';

/** How far the record can be relied on, and its repair. */
export function recordRoutes(care: RecordCare | undefined): Hono {
  const app = new Hono();
  const orNone = () => {
    if (care) return care;
    throw new NotFoundError('This server does not look after its record');
  };
  app.get('/record', async (c) => c.json(await orNone().standing()));
  app.post('/record/check', async (c) => {
    await orNone().check();
    return c.json(await orNone().standing());
  });
  app.post('/record/repair', async (c) => c.json(await orNone().repair()));
  return app;
}
