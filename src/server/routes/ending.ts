import { Hono } from 'hono';
import type { AdmitVariables } from '../sharing/admit.ts';

/** Ends the program from its page, at this computer alone; it answers first. */
export function endingRoutes(end: (() => void) | undefined): Hono<{ Variables: AdmitVariables }> {
  const routes = new Hono<{ Variables: AdmitVariables }>();
  routes.post('/end', async (c) => {
    if (!end || (await c.get('standing')()) !== 'this computer')
      return c.json({ message: 'Fairbend is ended on the shop’s computer only', findings: [] }, 403);
    setTimeout(end, answeredMs);
    return c.json({ ending: true });
  });
  return routes;
}

/** Time for the answer to leave. */
const answeredMs = 50;
