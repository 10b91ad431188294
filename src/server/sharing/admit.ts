import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Sessions } from './sessions.ts';

export const sessionCookie = 'fairbend-session';

/** What a request may: this computer everything, a paired device all but the pairing itself. */
export type Standing = 'this computer' | 'paired' | 'stranger';

/** Asked again by what lasts: a stream ends when its device is shut out. */
export type AdmitVariables = { standing: () => Promise<Standing> };

/**
 * Strangers get the page, which holds no data, and the door to pair at; every other answer of the API needs this
 * computer or a paired device's cookie.
 */
export function admit(
  sharing: { sessions: Sessions; entrance: { readonly open: boolean } } | undefined,
): MiddlewareHandler<{ Variables: AdmitVariables }> {
  return async (c, next) => {
    const token = getCookie(c, sessionCookie);
    const local = isThisComputer(c);
    const standing = async (): Promise<Standing> => {
      if (local) return 'this computer';
      return sharing?.entrance.open && (await sharing.sessions.knows(token)) ? 'paired' : 'stranger';
    };
    c.set('standing', standing);
    const open = c.req.path === '/api/pair' || !c.req.path.startsWith('/api/');
    if (!open && (await standing()) === 'stranger')
      return c.json(
        { message: 'This device is not paired. Pair it: Settings on the shop’s computer', findings: [] },
        401,
        // What it goes on sending is not read.
        { connection: 'close' },
      );
    if (c.req.path.startsWith('/api/sharing') && !local) return forbid(c, 'Devices are let in and shut out');
    if (/^\/api\/backups\/[^/]+\/restore$/.test(c.req.path) && !local)
      return forbid(c, 'Backups are restored');
    if (c.req.path.startsWith('/api/shop/import') && c.req.method !== 'GET' && !local)
      return forbid(c, 'A whole shop is taken in');
    if (/^\/api\/documents\/[^/]+\/erase$/.test(c.req.path) && !local)
      return forbid(c, 'Things are erased for good');
    if (c.req.path === '/api/record/repair' && !local) return forbid(c, 'The record is repaired');
    await next();
    return undefined;
  };
}

function forbid(c: Context, what: string): Response {
  return c.json({ message: `${what} on the shop’s computer only`, findings: [] }, 403);
}

/** By the connection, not by what the request says; what a proxy on this computer passes on is not from it. */
function isThisComputer(c: Context): boolean {
  const forwarded = ['x-forwarded-for', 'forwarded', 'x-real-ip', 'x-forwarded-host', 'via'];
  if (forwarded.some((name) => c.req.header(name) !== undefined)) return false;
  const incoming = (c.env as Partial<HttpBindings> | undefined)?.incoming;
  // Requests made in this process (tests) have no connection.
  if (!incoming) return true;
  const address = incoming.socket.remoteAddress ?? '';
  const name = (c.req.header('host') ?? '').replace(/:\d+$/, '');
  return (
    /^(127\.\d+\.\d+\.\d+|::1|::ffff:127\.\d+\.\d+\.\d+)$/.test(address) &&
    ['127.0.0.1', 'localhost', '[::1]'].includes(name)
  );
}
