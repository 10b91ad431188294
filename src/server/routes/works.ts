import { Hono } from 'hono';
import type { Works } from '../thread/works.ts';

/** Imports, exports, backups and readings of the whole record while they go on. */
export function workRoutes(works: Works): Hono {
  const app = new Hono();
  app.get('/works', (c) => c.json({ works: works.list() }));
  app.post('/works/:id/cancel', (c) => {
    works.cancel(c.req.param('id'));
    return c.json({ works: works.list() });
  });
  return app;
}
